import { type Affine, affineApply } from '../../geometry/affine.ts'
import { segmentAt } from '../../geometry/at.ts'
import { pathCubics } from '../../geometry/cubics.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'

/** A path as straight lines in pixels. A closed one does not repeat its start. */
export interface Polyline {
  readonly points: readonly Point[]
  readonly closed: boolean
}

/** How far a straight line may stray from the curve that it stands for, pixels. */
const flatness = 0.01

/** Arcs and cubics as straight lines no farther off than `flatness`; `map` takes the path to pixels. Throws RangeError on NaN. */
export const flattenPath = (path: Path, map: Affine): Polyline => {
  const stretch = Math.max(1e-9, Math.hypot(map[0], map[1]), Math.hypot(map[2], map[3]))
  const cubics = pathCubics(path, flatness / stretch / 2)
  const points: Point[] = [affineApply(map, cubics.start)]
  for (const piece of cubics.pieces) {
    const from = points.at(-1)!
    const to = affineApply(map, piece.to)
    if (piece.kind === 'cubic') {
      const [c1, c2] = [affineApply(map, piece.c1), affineApply(map, piece.c2)]
      const count = cubicLines(from, c1, c2, to)
      for (let i = 1; i < count; i++) points.push(segmentAt({ kind: 'cubic', from, c1, c2, to }, i / count))
    }
    if (piece.kind === 'line' && to.x === from.x && to.y === from.y) continue
    points.push(to)
  }
  const lost = points.find((p) => !Number.isFinite(p.x) || !Number.isFinite(p.y))
  if (lost) throw new RangeError(`a point of a path is ${lost.x}, ${lost.y}, which cannot be drawn`)
  const [first, last] = [points[0]!, points.at(-1)!]
  if (path.closed && points.length > 1 && first.x === last.x && first.y === last.y) points.pop()
  return { points, closed: path.closed }
}

/** Enough even steps for a cubic: its second difference bounds how far a chord strays (Wang's formula, 1984). */
const cubicLines = (a: Point, b: Point, c: Point, d: Point): number => {
  const bend = Math.max(
    Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y),
    Math.hypot(b.x - 2 * c.x + d.x, b.y - 2 * c.y + d.y),
  )
  return Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / flatness)))
}
