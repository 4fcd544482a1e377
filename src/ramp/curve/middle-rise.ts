import { bisect } from '../../geometry/bisect.ts'
import { type Point, pointBetween, pointDistance, pointSubtract } from '../../geometry/point.ts'
import type { Curve } from './curve.ts'

/** From the middle of the straight line between the toe and the place `end` square to it, onto the curve. */
export const middleRiseLine = (curve: Curve, end: number): readonly [Point, Point] => {
  const [toe, top] = [curve.point(curve.toe), curve.point(end)]
  const middle = pointBetween(toe, top, 0.5)
  const chord = pointSubtract(top, toe)
  const ahead = (place: number): number => {
    const p = pointSubtract(curve.point(place), middle)
    return p.x * chord.x + p.y * chord.y
  }
  return [middle, curve.point(bisect(ahead, curve.toe, end))]
}

/** How long that line is, mm; to the lip where no other end is said. */
export const middleRise = (curve: Curve, end = curve.lip): number =>
  pointDistance(...middleRiseLine(curve, end))
