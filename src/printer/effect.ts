import type { Curve } from '../ramp/curve.ts'
import { type Distortion, distortionMatrix } from './distortion.ts'
import type { Uncertainty } from './gauge.ts'

/** What a distortion makes of a curve when nothing is corrected; mm. */
export interface CurveEffect {
  /** how far the lip moves up and towards the back, seen from the toe */
  readonly lipUp: number
  readonly lipBack: number
  /** radius of the stretched curve at toe and lip */
  readonly toeRadius: number
  readonly lipRadius: number
}

/** Radius of curvature of a curve at a place, from three queries a small step apart; exact for a circle. */
const radiusAt = (curve: Curve, place: number): number => {
  const step = (curve.lip - curve.toe) / 64
  return Math.abs(
    (curve.lengthTo(place + step) - curve.lengthTo(place - step)) /
      (curve.slope(place + step) - curve.slope(place - step)),
  )
}

/**
 * An affine map M turns the curvature κ of a curve with unit tangent t into κ·|det M|/|M t|³ (curvature is the area of
 * first and second derivative over the cube of the speed, and areas scale by det M).
 */
export const curveEffect = (curve: Curve, distortion: Distortion): CurveEffect => {
  const [a, b, c, d] = distortionMatrix(distortion)
  const radius = (place: number): number => {
    const slope = curve.slope(place)
    const [x, y] = [Math.cos(slope), Math.sin(slope)]
    return (radiusAt(curve, place) * Math.hypot(a * x + c * y, b * x + d * y) ** 3) / Math.abs(a * d - b * c)
  }
  const [toe, lip] = [curve.point(curve.toe), curve.point(curve.lip)]
  const [run, rise] = [lip.x - toe.x, lip.y - toe.y]
  return {
    lipUp: b * run + d * rise - rise,
    lipBack: a * run + c * rise - run,
    toeRadius: radius(curve.toe),
    lipRadius: radius(curve.lip),
  }
}

/** How far the lip may still lie from its place, seen from the toe, when the printer is corrected but known this well; mm. */
export const leftAtLip = (
  curve: Curve,
  { likely, worst }: { readonly likely: Uncertainty; readonly worst: Uncertainty },
) => {
  const [toe, lip] = [curve.point(curve.toe), curve.point(curve.lip)]
  const [run, rise] = [Math.abs(lip.x - toe.x), Math.abs(lip.y - toe.y)]
  return {
    likely: Math.hypot(run * likely.across, rise * likely.skew, rise * likely.down),
    worst: Math.hypot(run * worst.across + rise * worst.skew, rise * worst.down),
  }
}
