import { arcSegment } from '../../geometry/path.ts'
import { type Point, pointAngle, pointDistance } from '../../geometry/point.ts'
import type { Curve } from './curve.ts'

/** Angles about the centre are reckoned from straight down, so that they equal the slope. */
const down = -Math.PI / 2

/** A transition that is an arc of a circle: a place is its slope in radians. Every answer is a closed form. */
export const circleCurve = (centre: Point, radius: number, toe: number, lip: number): Curve => {
  const angleTo = (p: Point): number => {
    const angle = pointAngle(centre, p) - down
    return angle > Math.PI ? angle - 2 * Math.PI : angle
  }
  return {
    toe,
    lip,
    point: (place) => ({ x: centre.x + radius * Math.sin(place), y: centre.y - radius * Math.cos(place) }),
    slope: (place) => place,
    radiusAt: () => radius,
    lengthTo: (place) => radius * (place - toe),
    placeAtLength: (length) => toe + length / radius,
    placeAtHeight: (y) => {
      const cos = (centre.y - y) / radius
      return Math.abs(cos) <= 1 ? Math.acos(cos) : null
    },
    placeAtDistance: (from, distance) => {
      const d = pointDistance(centre, from)
      const cos = (d * d + radius * radius - distance * distance) / (2 * d * radius)
      return Math.abs(cos) <= 1 ? angleTo(from) - Math.acos(cos) : null
    },
    nearest: (p) => ({ place: angleTo(p), distance: pointDistance(centre, p) - radius }),
    offset: (distance) => circleCurve(centre, radius - distance, toe, lip),
    segments: (from, to) => [arcSegment(centre, radius, from + down, to - from)],
  }
}
