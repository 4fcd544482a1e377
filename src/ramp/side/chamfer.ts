import type { QuarterDesign, Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { type Draft, stop, type Trial } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { chamferKey, firstThat, manyFaults, orWays } from '../check/remedy.ts'
import { offering, set, told } from '../check/told.ts'
import type { SolvedCoping } from './coping.ts'
import type { Transition } from './transition.ts'

/** How long the leg of the 45° cut at the back bottom corner may be, mm, and what it meets there. */
const chamferLimit = (
  { curve, heights }: Transition,
  coping: SolvedCoping | null,
  length: number,
): { readonly most: number; readonly meets: string } => {
  // the cut runs where x − y = length − leg; the curve comes nearest to it where it stands at 45° itself
  const steepness = (place: number): number => curve.slope(place) - Math.PI / 4
  const place =
    steepness(curve.lip) <= 0
      ? curve.lip
      : steepness(curve.toe) >= 0
        ? curve.toe
        : bisect(steepness, curve.toe, curve.lip)
  const near = curve.point(place)
  const reach = coping === null ? 0 : (coping.outside / 2) * (coping.seat === 'square' ? 2 : Math.SQRT2)
  const limits = [
    { most: heights.frame, meets: 'the top line' },
    { most: length, meets: 'the front' },
    { most: length - (near.x - near.y), meets: 'the curve' },
    ...(coping ? [{ most: length - (coping.centre.x - coping.centre.y + reach), meets: 'the notch' }] : []),
  ]
  return limits.reduce((least, limit) => (limit.most < least.most ? limit : least))
}

export const chamferFindings = (
  design: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  length: number,
  units: Units,
): readonly Draft[] => {
  const leg = design.chamfer
  const limit = chamferLimit(transition, coping, length)
  if (leg < limit.most - same) return []
  return [
    stop('chamfer', (trial: Trial) => {
      const shorter = limit.most > 12 ? firstThat(trial, design, chamferKey, limit.most, -1, units) : null
      const without = trial(chamferKey.typed(design, 0))
        ? offering('leave it out', set('chamfer', 'none'))
        : manyFaults
      const remedy = orWays([shorter && told`it may be at most ${shorter}`], without)
      return told`a chamfer with a leg of ${measured(leg, units)} cuts into ${limit.meets}; ${remedy}`
    }),
  ]
}
