import { type Box, boxGrow, boxOverlaps, pointsBounds, segmentBounds } from '../../geometry/bounds.ts'
import type { ArcSegment, Segment } from '../../geometry/path.ts'
import { type Point, pointCross, pointDistance, pointSubtract } from '../../geometry/point.ts'

/** A point as a straight line sees it, mm: so far along it from its start, so far to the left of it. */
export interface Beside {
  readonly along: number
  readonly beside: number
}

/** A stretch along a straight line, mm from its start. */
interface Stretch {
  readonly low: number
  readonly high: number
}

export interface Bounded {
  readonly segment: Segment
  readonly bounds: Box
}

/** A segment that comes near to a straight line; what of it lies as near lies in this stretch. */
export interface NearLine extends Stretch {
  readonly segment: Segment
}

export const bounded = (segment: Segment): Bounded => ({ segment, bounds: segmentBounds(segment) })

/** How a straight line sees points. */
export const besideOf = ([a, b]: readonly [Point, Point]): ((p: Point) => Beside) => {
  const length = pointDistance(a, b)
  const way = { x: (b.x - a.x) / length, y: (b.y - a.y) / length }
  return (p) => {
    const away = pointSubtract(p, a)
    return { along: away.x * way.x + away.y * way.y, beside: pointCross(way, away) }
  }
}

/**
 * Segments that may come nearer to a straight line than `reach`, each with the stretch where it can: an arc, which may cross the line
 * twice, once for each stretch. One too many does no harm.
 */
export const linesNear = (
  segments: readonly Bounded[],
  line: readonly [Point, Point],
  reach: number,
): readonly NearLine[] => {
  const around = boxGrow(pointsBounds(line), reach)
  const seen = besideOf(line)
  return segments
    .filter(({ bounds }) => boxOverlaps(bounds, around))
    .flatMap(({ segment, bounds }) =>
      stretchesOf(segment, bounds, seen, reach).map((stretch) => ({ segment, ...stretch })),
    )
}

const stretchesOf = (
  segment: Segment,
  { x0, y0, x1, y1 }: Box,
  seen: (p: Point) => Beside,
  reach: number,
): readonly Stretch[] => {
  if (segment.kind === 'line') return stretchWithin(seen(segment.from), seen(segment.to), reach)
  const corners = [
    seen({ x: x0, y: y0 }),
    seen({ x: x1, y: y0 }),
    seen({ x: x1, y: y1 }),
    seen({ x: x0, y: y1 }),
  ]
  const [left, right] = [Math.min(...corners.map((p) => p.along)), Math.max(...corners.map((p) => p.along))]
  if (segment.kind === 'cubic') return [{ low: left, high: right }]
  return circleWithin(seen(segment.centre), segment, reach)
    .map(({ low, high }) => ({ low: Math.max(low, left), high: Math.min(high, right) }))
    .filter(({ low, high }) => low <= high)
}

/** Where a circle lies no farther from a straight line than so, along that: on each side of its middle. */
const circleWithin = (
  { along, beside }: Beside,
  { radius }: ArcSegment,
  reach: number,
): readonly Stretch[] => {
  const [nearest, farthest] = [Math.max(0, Math.abs(beside) - reach), Math.abs(beside) + reach]
  if (nearest > radius) return []
  const most = Math.sqrt(radius * radius - nearest * nearest)
  const least = farthest >= radius ? 0 : Math.sqrt(radius * radius - farthest * farthest)
  return [
    { low: along - most, high: along - least },
    { low: along + least, high: along + most },
  ]
}

/** How much of a straight line lies no farther from a straight line than so, along that; none or one. */
export const stretchWithin = (from: Beside, to: Beside, reach: number): readonly Stretch[] => {
  if (from.beside > reach && to.beside > reach) return []
  if (from.beside < -reach && to.beside < -reach) return []
  const rise = to.beside - from.beside
  const level = Math.abs(rise) < 1e-9
  if (level && Math.abs(from.beside) > reach) return []
  const s0 = level ? 0 : (-reach - from.beside) / rise
  const s1 = level ? 1 : (reach - from.beside) / rise
  const first = Math.max(0, Math.min(s0, s1))
  const last = Math.min(1, Math.max(s0, s1))
  if (first >= last) return []
  const p = from.along + first * (to.along - from.along)
  const q = from.along + last * (to.along - from.along)
  return [{ low: Math.min(p, q), high: Math.max(p, q) }]
}
