import { type Drawing, type Layer, type Pen, stroke } from '../../drawing/drawing.ts'
import { segmentAt, segmentDirection } from '../../geometry/at.ts'
import { lineCrossings } from '../../geometry/clip.ts'
import { segmentLength } from '../../geometry/length.ts'
import { type Path, pathOf, pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointDistance, pointToward } from '../../geometry/point.ts'

export interface WasteBandStyle {
  readonly layer: Layer
  readonly pen: Pen
  /** of the band, mm */
  readonly depth: number
  /** from stroke to stroke along the path, mm */
  readonly spacing: number
  /** clear of the line that is sawn, mm */
  readonly gap?: number
}

/**
 * Short strokes that lean at 45° off a cut line, on the side that falls off: 1 is on the left of the path's way, -1 on its right.
 * Where the path turns towards them they stop before it.
 */
export const wasteBand = (
  path: Path,
  side: 1 | -1,
  { layer, pen, depth, spacing, gap = 0.6 }: WasteBandStyle,
): Drawing => {
  if (!(spacing > 0)) throw new RangeError(`strokes ${spacing} mm apart cannot be drawn`)
  const segments = pathSegments(path)
  const marks: Drawing[number][] = []
  let next = spacing / 2
  for (const segment of segments) {
    const length = segmentLength(segment)
    for (; next < length; next += spacing) {
      const t = next / length
      const foot = segmentAt(segment, t)
      const way = segmentDirection(segment, t) + side * (Math.PI / 4)
      const from = pointToward(foot, way, gap * Math.SQRT2)
      const to = pointToward(foot, way, depth * Math.SQRT2)
      const free = Math.min(
        ...segments.map((other) =>
          other === segment ? Number.POSITIVE_INFINITY : firstHit(foot, to, other),
        ),
      )
      const reach = Math.min(pointDistance(foot, to), free - gap * Math.SQRT2)
      if (reach > gap * Math.SQRT2 + 0.3)
        marks.push(stroke(layer, pathOf(from, pointToward(foot, way, reach)), pen))
    }
    next -= length
  }
  return marks
}

/** How far from p towards q a segment is met; infinity where it is not. */
const firstHit = (p: Point, q: Point, segment: Segment): number => {
  const reach = pointDistance(p, q)
  return Math.min(
    Number.POSITIVE_INFINITY,
    ...lineCrossings(segment, p, q)
      .filter((t) => t >= 0 && t <= 1)
      .map((t) => segmentAt(segment, t))
      .map((hit) => ((hit.x - p.x) * (q.x - p.x) + (hit.y - p.y) * (q.y - p.y)) / reach)
      .filter((along) => along >= 0 && along <= reach),
  )
}
