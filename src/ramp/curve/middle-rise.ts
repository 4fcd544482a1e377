import { bisect } from '../../geometry/bisect.ts'
import { pointBetween, pointDistance, pointSubtract } from '../../geometry/point.ts'
import type { Curve } from './curve.ts'

/** From the middle of the straight line between toe and lip square to the curve, mm. */
export const middleRise = (curve: Curve): number => {
  const [toe, lip] = [curve.point(curve.toe), curve.point(curve.lip)]
  const middle = pointBetween(toe, lip, 0.5)
  const chord = pointSubtract(lip, toe)
  const ahead = (place: number): number => {
    const p = pointSubtract(curve.point(place), middle)
    return p.x * chord.x + p.y * chord.y
  }
  return pointDistance(middle, curve.point(bisect(ahead, curve.toe, curve.lip)))
}
