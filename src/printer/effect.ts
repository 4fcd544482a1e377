import { affineAngle, affineIdentity, affineInvert, affineRotate, affineThen } from '../geometry/affine.ts'
import type { Curve } from '../ramp/curve/curve.ts'
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

/** Radius of the curve at the lip, mm. */
export const radiusOf = (curve: Curve): number => radiusAt(curve, curve.lip)

/** How pages lie on a pattern: across and down are the printer's own, and rows are laid straight. */
export interface Laid {
  /** what of the page runs along a row */
  readonly rows: 'across' | 'down'
  /** direction of the rows in the pattern, radians */
  readonly angle: number
}

/** What a distortion makes of the pattern once its rows lie straight again, as [a, b, c, d] of X = a·x + c·y, Y = b·x + d·y. */
const laidMatrix = (distortion: Distortion, { rows, angle }: Laid): readonly number[] => {
  const [a, b, c, d] = distortionMatrix(distortion)
  const toPage = affineThen(
    affineRotate(-angle),
    rows === 'across' ? affineIdentity : affineRotate(Math.PI / 2),
  )
  const printed = affineThen(affineThen(toPage, [a, b, c, d, 0, 0]), affineInvert(toPage))
  const lean = affineAngle(printed, angle) - angle
  return affineThen(printed, affineRotate(-lean))
}

/**
 * An affine map M turns the curvature κ of a curve with unit tangent t into κ·|det M|/|M t|³ (curvature is the area of
 * first and second derivative over the cube of the speed, and areas scale by det M).
 */
export const curveEffect = (curve: Curve, distortion: Distortion, laid: Laid): CurveEffect => {
  const [a, b, c, d] = laidMatrix(distortion, laid) as [number, number, number, number]
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

/** From one place of a pattern to another, mm along the rows and off them; `rows`: what of the page runs along them. */
export interface Reach {
  readonly along: number
  readonly off: number
  readonly rows: Laid['rows']
}

/** On pages that lie so, from a place to one that is dx, dy from it. */
export const wayOn = ({ rows, angle }: Laid, dx: number, dy: number): Reach => ({
  along: Math.abs(dx * Math.cos(angle) + dy * Math.sin(angle)),
  off: Math.abs(dy * Math.cos(angle) - dx * Math.sin(angle)),
  rows,
})

/** How far a place so far from another may lie off when the printer is corrected but known this well; mm. */
export const leftOver = (
  { along, off, rows }: Reach,
  { likely, worst }: { readonly likely: Uncertainty; readonly worst: Uncertainty },
) => {
  // a lean moves what lies off a row along it
  const parts = ({ across, down, skew }: Uncertainty) =>
    rows === 'across'
      ? { along: along * across, off: off * down, lean: off * skew }
      : { along: along * down, off: off * across, lean: off * skew }
  const [one, most] = [parts(likely), parts(worst)]
  return {
    likely: Math.hypot(one.along, one.off, one.lean),
    worst: Math.hypot(most.along + most.lean, most.off),
  }
}

/** How far the lip may still lie from its place, seen from the toe; mm. */
export const leftAtLip = (curve: Curve, uncertainty: Parameters<typeof leftOver>[1], laid: Laid) => {
  const [toe, lip] = [curve.point(curve.toe), curve.point(curve.lip)]
  return leftOver(wayOn(laid, lip.x - toe.x, lip.y - toe.y), uncertainty)
}
