import { segmentAt } from './at.ts'
import { lineCrossings } from './clip.ts'
import { type Path, pathSegments, type Segment, segmentsPath } from './path.ts'
import { type Point, pointDistance } from './point.ts'
import { segmentPart } from './split.ts'

/** A point lies on a path within this, mm. */
const near = 1e-4

/**
 * A closed path cut in two along the line from one of its points to another: the part with the path's start, which it keeps, and
 * the other, which starts at `from`. In the path's direction `from` comes before `to`. Both run the same way round as
 * the whole; arcs stay arcs. Throws RangeError where a point is not on the path.
 */
export const pathCut = (path: Path, from: Point, to: Point): readonly [Path, Path] => {
  const segments = [to, from].reduce(
    (all, p) => all.flatMap((segment) => splitAt(segment, p, from, to)),
    pathSegments(path),
  )
  const first = segments.findIndex((segment) => segment.from === from)
  const last = segments.findIndex((segment) => segment.from === to)
  if (first < 0 || last <= first)
    throw new RangeError(
      `no cut from ${from.x}, ${from.y} to ${to.x}, ${to.y}: not on the path in this order`,
    )
  const closed = (all: readonly Segment[]): Path => ({ ...segmentsPath(all), closed: true })
  return [
    closed([...segments.slice(0, first), { kind: 'line', from, to }, ...segments.slice(last)]),
    closed([...segments.slice(first, last), { kind: 'line', from: to, to: from }]),
  ]
}

/** In two at a point where the line through both ends of the cut crosses it; whole where that lies elsewhere. */
const splitAt = (segment: Segment, p: Point, a: Point, b: Point): readonly Segment[] => {
  if (pointDistance(segment.from, p) < near) return [{ ...segment, from: p }]
  if (pointDistance(segment.to, p) < near) return [{ ...segment, to: p }]
  const t = lineCrossings(segment, a, b).find(
    (t) => t > 0 && t < 1 && pointDistance(segmentAt(segment, t), p) < near,
  )
  if (t === undefined) return [segment]
  return [
    { ...segmentPart(segment, 0, t), to: p },
    { ...segmentPart(segment, t, 1), from: p },
  ]
}
