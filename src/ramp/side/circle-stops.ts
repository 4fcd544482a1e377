import type { QuarterDesign, Units } from '../../design/design.ts'
import { radiansOf } from '../../geometry/degrees.ts'
import { showAngle } from '../../length/show-angle.ts'
import { anyWarning, type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import {
  bringing,
  firstThat,
  heightKey,
  type Key,
  manyFaults,
  type Offered,
  orWays,
  quietThat,
  radiusKey,
  tangentKey,
  toeKey,
} from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'

/** What a design says of its circle, mm. */
export interface Reckoned {
  /** of the whole skin, and of the deck board */
  readonly skin: number
  readonly board: number
  readonly radius: { readonly frame: number; readonly surface: number }
  /** height of the centre over the floor */
  readonly centre: number
  /** radius of the layer whose height is given, and that height, of a deck less its board */
  readonly level: number
  readonly wanted: number
}

/** Degrees; a lip that is steeper is warned of. */
export const steepest = 80

const steepLimit = radiansOf(steepest)

const firstFor =
  (ramp: QuarterDesign, units: Units) =>
  (trial: Trial, key: Key, from: number, towards: 1 | -1): Offered | null =>
    firstThat(trial, ramp, key, from, towards, units)

/** Why there is no curve: the first of what may be wrong; null where nothing is. */
export const circleStop = (ramp: QuarterDesign, reckoned: Reckoned, units: Units): Draft | null => {
  const { radius, centre, level, wanted } = reckoned
  if (radius.surface <= 0) return skinStop(ramp, reckoned, units)
  if (wanted > centre + same) return overhangStop(ramp, reckoned, units)
  if (wanted <= centre - level + same) return lowStop(ramp, reckoned, units)
  if (ramp.toe < centre - radius.frame - same) return toeLowStop(ramp, reckoned, units)
  const frame =
    ramp.height.layer === 'surface'
      ? centre - radius.frame * Math.cos(Math.acos((centre - wanted) / level))
      : wanted
  return ramp.toe >= frame - same ? toeHighStop(ramp, reckoned, frame, units) : null
}

/** The layer whose height is given, over the toe; at its lowest where the toe lies below the curve. */
const footOf = ({ toe }: QuarterDesign, { radius, centre, level }: Reckoned): number =>
  centre - level * Math.cos(Math.acos(Math.min(1, (centre - toe) / radius.frame)))

const skinStop = (ramp: QuarterDesign, { radius, skin }: Reckoned, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  const first = firstFor(ramp, units)
  return stop('radius-skin', (trial: Trial) => {
    const larger = first(trial, radiusKey(ramp), skin, 1)
    return tell(
      `the frame's radius ${show(radius.frame)} leaves no ridden face inside a skin ${show(skin)} thick; `,
      orWays([larger && told`give a radius of ${larger} or more`], `take a thinner skin; ${manyFaults}`),
    )
  })
}

const overhangStop = (ramp: QuarterDesign, { centre, wanted }: Reckoned, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  const { atLeast, atMost } = offer(units)
  const first = firstFor(ramp, units)
  const { layer, value } = ramp.height
  const { circle } = ramp.transition
  return stop('overhang', (trial: Trial) => {
    const larger = first(trial, radiusKey(ramp), circle.radius + (wanted - centre), 1)
    const lower = first(trial, heightKey(ramp), value - (wanted - centre), -1)
    // the least stands nearly upright: what need not be watched is larger
    const quiet: Trial = (changed) => trial(changed, [anyWarning])
    const calm = larger && first(quiet, radiusKey(ramp), larger.mm, 1)
    const calmer = calm !== null && larger !== null && calm.mm > larger.mm + same
    return tell(
      `a ${layer} height of ${show(value)} lies above the centre of the curve (${show(centre)}), so the lip would lean over the rider; `,
      orWays(
        [
          larger &&
            told`the least ${circle.layer} radius for this height is ${larger}${calmer ? told` (${calm} brings nothing more to watch)` : ''}`,
          lower && told`lower the height to ${lower}`,
        ],
        `the curve needs a ${circle.layer} radius of ${atLeast(circle.radius + (wanted - centre))} or a height of ${atMost(value - (wanted - centre))}, but then another part stops; ${manyFaults}`,
      ),
    )
  })
}

const lowStop = (ramp: QuarterDesign, reckoned: Reckoned, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  const first = firstFor(ramp, units)
  const { layer, value } = ramp.height
  const { tangent } = ramp.transition
  return stop('height-low', (trial: Trial) => {
    const higher = first(trial, heightKey(ramp), footOf(ramp, reckoned) + value - reckoned.wanted, 1)
    const lower = first(trial, tangentKey(ramp), tangent.height, -1)
    return tell(
      `a ${layer} height of ${show(value)} is not above the lowest point of the curve; `,
      orWays(
        [higher && told`make it ${higher} or more`, lower && told`lower the tangent to ${lower}`],
        `make it higher; ${manyFaults}`,
      ),
    )
  })
}

const toeLowStop = (ramp: QuarterDesign, { radius, centre }: Reckoned, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  const first = firstFor(ramp, units)
  const { tangent } = ramp.transition
  const lowest = centre - radius.frame
  return stop('toe-low', (trial: Trial) => {
    const higher = first(trial, toeKey, lowest, 1)
    // a lower tangent takes it off the flat that it meets
    const lower =
      higher && ramp.runOut.kind === 'flat'
        ? null
        : first(trial, tangentKey(ramp), tangent.height - (lowest - ramp.toe), -1)
    return tell(
      `the curve never comes down to a toe of ${show(ramp.toe)}: its lowest point is ${show(lowest)} above the floor; `,
      orWays(
        [higher && told`the lowest toe is ${higher}`, lower && told`lower the tangent to ${lower}`],
        `take a higher toe or a lower tangent; ${manyFaults}`,
      ),
    )
  })
}

/** `frame`: height of the side's top line, mm. */
const toeHighStop = (ramp: QuarterDesign, reckoned: Reckoned, frame: number, units: Units): Draft => {
  const show = (mm: number): string => measured(mm, units)
  const first = firstFor(ramp, units)
  const { layer, value } = ramp.height
  return stop('toe-high', (trial: Trial) => {
    const lower = first(trial, toeKey, frame, -1)
    const higher = first(trial, heightKey(ramp), footOf(ramp, reckoned) + value - reckoned.wanted, 1)
    return tell(
      `a toe of ${show(ramp.toe)} is not below the side's top line, ${show(frame)} above the floor; `,
      orWays(
        [
          lower && told`make the toe ${lower} or less`,
          higher && told`make the ${layer} height ${higher} or more`,
        ],
        `take a lower toe or a greater height; ${manyFaults}`,
      ),
    )
  })
}

/** A lip that is nearly a wall; `lipAngle` in radians. */
export const steepFindings = (
  ramp: QuarterDesign,
  { centre, level, wanted }: Reckoned,
  lipAngle: number,
  units: Units,
): readonly Draft[] => {
  if (lipAngle <= steepLimit + 1e-9) return []
  const { circle } = ramp.transition
  // a layer that runs level at height H and stands at 80° at height h: radius (1 − cos 80°) = h − H
  const least = (wanted - (centre - level)) / (1 - Math.cos(steepLimit)) + circle.radius - level
  return [
    warn('steep', (trial: Trial) => {
      const key = radiusKey(ramp)
      const larger = quietThat(trial, ramp, key, least, 1, units, ['panel-size'])
      return tell(
        `the lip stands at ${showAngle(lipAngle)}, over 80°: nearly a wall; `,
        orWays(
          [
            larger &&
              told`at this height a ${circle.layer} radius of ${larger} or more keeps it under 80°${bringing(trial, ramp, key, larger, ['panel-size', 'a side is larger than a panel'])}`,
          ],
          `take a larger radius; ${manyFaults}`,
        ),
      )
    }),
  ]
}
