import { segmentAt } from '../at.ts'
import { type Path, pathSegments, type Segment } from '../path.ts'
import { type Point, pointCross, pointToward } from '../point.ts'

/**
 * Corners, counter-clockwise, of a polygon that holds a closed path and strays no more than `tolerance` mm out of it: chords
 * where an arc curves in, tangents where it bulges out. Cubics are sampled, and may bulge out by as much.
 */
export const outerPolygon = (path: Path, tolerance: number): readonly Point[] => {
  const segments = pathSegments(path)
  const turn = Math.sign(doubleArea(segments.flatMap((segment) => [segment.from, segmentAt(segment, 0.5)])))
  const points = segments.flatMap((segment) => [segment.from, ...between(segment, turn, tolerance)])
  const distinct = points.filter((p, i) => {
    const next = points[(i + 1) % points.length]!
    return Math.abs(p.x - next.x) > 1e-9 || Math.abs(p.y - next.y) > 1e-9
  })
  return turn < 0 ? distinct.reverse() : distinct
}

/** Twice the area of a polygon, positive where it runs counter-clockwise (Gauss). */
export const doubleArea = (points: readonly Point[]): number =>
  points.reduce((sum, p, i) => sum + pointCross(p, points[(i + 1) % points.length]!), 0)

/** Points of the polygon between the ends of a segment; wood lies on the side that `turn` says. */
const between = (segment: Segment, turn: number, tolerance: number): readonly Point[] => {
  switch (segment.kind) {
    case 'line':
      return []
    case 'arc': {
      const { centre, radius, startAngle, sweep } = segment
      const bulges = Math.sign(sweep) === turn
      // a chord's rise is R (1 − cos), a tangent's corner stands R (1 / cos − 1) out
      const share = Math.min(0.5, tolerance / radius)
      const half = Math.acos(bulges ? 1 / (1 + share) : 1 - share)
      const count = Math.max(1, Math.ceil(Math.abs(sweep) / (2 * half)))
      const step = sweep / count
      return bulges
        ? Array.from({ length: count }, (_, i) =>
            pointToward(centre, startAngle + step * (i + 0.5), radius / Math.cos(step / 2)),
          )
        : Array.from({ length: count - 1 }, (_, i) =>
            pointToward(centre, startAngle + step * (i + 1), radius),
          )
    }
    case 'cubic': {
      const { from, c1, c2, to } = segment
      const bend = Math.max(
        Math.hypot(from.x - 2 * c1.x + c2.x, from.y - 2 * c1.y + c2.y),
        Math.hypot(c1.x - 2 * c2.x + to.x, c1.y - 2 * c2.y + to.y),
      )
      // a chord strays no farther than 3/4 of the second difference over n² (Wang 1984)
      const count = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)))
      return Array.from({ length: count - 1 }, (_, i) => segmentAt(segment, (i + 1) / count))
    }
    default:
      return segment satisfies never
  }
}
