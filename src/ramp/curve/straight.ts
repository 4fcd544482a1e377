import { type Point, pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import type { Curve } from './curve.ts'

/** A straight edge from one end to the other: a place is the length from the first. Every answer is a closed form. */
export const straightCurve = (from: Point, to: Point): Curve => {
  const [length, angle] = [pointDistance(from, to), pointAngle(from, to)]
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const point = (place: number): Point => pointToward(from, angle, place)
  /** along the edge from its start, and square to it into the wood */
  const offEdge = (p: Point): { readonly along: number; readonly into: number } => {
    const [dx, dy] = [p.x - from.x, p.y - from.y]
    return { along: dx * cos + dy * sin, into: dx * sin - dy * cos }
  }
  return {
    toe: 0,
    lip: length,
    point,
    slope: () => angle,
    radiusAt: () => Number.POSITIVE_INFINITY,
    lengthTo: (place) => place,
    placeAtLength: (along) => along,
    // a level edge is at its own height everywhere: at its start first
    placeAtHeight: (y) => (from.y === to.y ? (y === from.y ? 0 : null) : (y - from.y) / sin),
    placeAtDistance: (centre, distance) => {
      const { along, into } = offEdge(centre)
      return distance >= Math.abs(into) ? along - Math.sqrt(distance * distance - into * into) : null
    },
    nearest: (p) => {
      const { along, into } = offEdge(p)
      return { place: along, distance: into }
    },
    offset: (distance) => {
      const move = (p: Point): Point => pointToward(p, angle + Math.PI / 2, distance)
      return straightCurve(move(from), move(to))
    },
    segments: (a, b) => [{ kind: 'line', from: point(a), to: point(b) }],
  }
}
