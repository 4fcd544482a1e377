import type { Segment } from './path.ts'
import { type Point, pointAngle, pointToward } from './point.ts'

/** The point at parameter t in 0 … 1: even along lines and arcs, Bernstein for cubics. Ends are the stored ends. */
export const segmentAt = (segment: Segment, t: number): Point => {
  if (t === 0) return segment.from
  if (t === 1) return segment.to
  switch (segment.kind) {
    case 'line':
      return {
        x: segment.from.x + (segment.to.x - segment.from.x) * t,
        y: segment.from.y + (segment.to.y - segment.from.y) * t,
      }
    case 'arc':
      return pointToward(segment.centre, segment.startAngle + segment.sweep * t, segment.radius)
    case 'cubic': {
      const u = 1 - t
      const w0 = u * u * u
      const w1 = 3 * u * u * t
      const w2 = 3 * u * t * t
      const w3 = t * t * t
      return {
        x: w0 * segment.from.x + w1 * segment.c1.x + w2 * segment.c2.x + w3 * segment.to.x,
        y: w0 * segment.from.y + w1 * segment.c1.y + w2 * segment.c2.y + w3 * segment.to.y,
      }
    }
    default:
      return segment satisfies never
  }
}

/** Direction of travel at t, radians. */
export const segmentDirection = (segment: Segment, t: number): number => {
  switch (segment.kind) {
    case 'line':
      return pointAngle(segment.from, segment.to)
    case 'arc':
      return segment.startAngle + segment.sweep * t + (segment.sweep >= 0 ? Math.PI / 2 : -Math.PI / 2)
    case 'cubic': {
      const u = 1 - t
      const { from, c1, c2, to } = segment
      return Math.atan2(
        u * u * (c1.y - from.y) + 2 * u * t * (c2.y - c1.y) + t * t * (to.y - c2.y),
        u * u * (c1.x - from.x) + 2 * u * t * (c2.x - c1.x) + t * t * (to.x - c2.x),
      )
    }
    default:
      return segment satisfies never
  }
}
