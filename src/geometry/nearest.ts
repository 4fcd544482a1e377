import type { ArcSegment, Path, Segment } from './path.ts'
import { pathSegments } from './path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from './point.ts'

/** Whether a point lies beside an arc: on a normal of it, and not beyond its ends. */
const isBeside = ({ centre, startAngle, sweep }: ArcSegment, p: Point): boolean => {
  const turn = 2 * Math.PI
  const ahead = (pointAngle(centre, p) - startAngle) * Math.sign(sweep)
  return ((ahead % turn) + turn) % turn <= Math.abs(sweep)
}

/** The point of a line or an arc that lies nearest to another. Throws RangeError on a cubic. */
export const segmentNearest = (segment: Segment, p: Point): Point => {
  const { from, to } = segment
  switch (segment.kind) {
    case 'line': {
      const [dx, dy] = [to.x - from.x, to.y - from.y]
      const size = dx * dx + dy * dy
      const t = size === 0 ? 0 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / size
      return pointBetween(from, to, Math.min(1, Math.max(0, t)))
    }
    case 'arc':
      if (isBeside(segment, p))
        return pointToward(segment.centre, pointAngle(segment.centre, p), segment.radius)
      return pointDistance(p, from) <= pointDistance(p, to) ? from : to
    case 'cubic':
      throw new RangeError('the nearest point of a cubic has no closed form')
    default:
      return segment satisfies never
  }
}

/** Distance of a point from a line or an arc, mm. Throws RangeError on a cubic, which has no closed form. */
export const segmentDistance = (segment: Segment, p: Point): number => {
  switch (segment.kind) {
    case 'line':
      return pointDistance(p, segmentNearest(segment, p))
    case 'arc': {
      if (isBeside(segment, p)) return Math.abs(pointDistance(segment.centre, p) - segment.radius)
      return Math.min(pointDistance(p, segment.from), pointDistance(p, segment.to))
    }
    case 'cubic':
      throw new RangeError('the distance from a cubic has no closed form')
    default:
      return segment satisfies never
  }
}

/** Distance of a point from a path of lines and arcs, mm. */
export const pathDistance = (path: Path, p: Point): number =>
  Math.min(...pathSegments(path).map((segment) => segmentDistance(segment, p)))
