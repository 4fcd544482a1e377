import type { Path, Segment } from './path.ts'
import { pathSegments } from './path.ts'
import { type Point, pointAngle, pointDistance } from './point.ts'

/** Distance of a point from a line or an arc, mm. Throws RangeError on a cubic, which has no closed form. */
export const segmentDistance = (segment: Segment, p: Point): number => {
  switch (segment.kind) {
    case 'line': {
      const [dx, dy] = [segment.to.x - segment.from.x, segment.to.y - segment.from.y]
      const size = dx * dx + dy * dy
      const t = size === 0 ? 0 : ((p.x - segment.from.x) * dx + (p.y - segment.from.y) * dy) / size
      const u = Math.min(1, Math.max(0, t))
      return Math.hypot(p.x - segment.from.x - u * dx, p.y - segment.from.y - u * dy)
    }
    case 'arc': {
      const turn = 2 * Math.PI
      const ahead = (pointAngle(segment.centre, p) - segment.startAngle) * Math.sign(segment.sweep)
      const along = ((ahead % turn) + turn) % turn
      if (along <= Math.abs(segment.sweep)) return Math.abs(pointDistance(segment.centre, p) - segment.radius)
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
