import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { quote } from '../../length/quote.ts'
import { type Finding, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { highStep, stepLimit, stepWords } from '../check/practice.ts'
import { orWays, tangentKey } from '../check/remedy.ts'
import { offering, set, type Told, tell } from '../check/told.ts'
import { leastRipped } from '../frame/stud.ts'
import type { Flat, Quarter } from '../ramp.ts'
import type { Transition } from '../side/transition.ts'
import { flatRange } from './flat-heights.ts'
import { type MeetingChange, type MeetingTrial, meetWithin } from './meeting-trial.ts'
import { noWay, overFloor, toesFor, type Way, withToe } from './toe-way.ts'

/** What tangent and toe together lose and gain when they are typed in sixteenths of an inch, mm. */
const roundings = 3

const within = (mm: number, { least, most }: Range): boolean => mm >= least - same && mm <= most + same

/** The face runs level at another height than the flat that it meets. */
export const heightFinding = (
  quarter: Quarter,
  transition: Transition,
  flat: Flat,
  trial: MeetingTrial,
  units: Units,
): Finding => {
  const show = (mm: number): string => measured(mm, units)
  const [level, surface] = [transition.level.surface, flat.heights.surface]
  const over = transition.toeStep - surface
  const steps =
    over > stepLimit + same
      ? `, and at the toe the face ends ${highStep(over, units)} above it (a wheel stops at more than ${stepWords[units]})`
      : ''
  return warn(
    'flat-meets',
    tell(
      `the ridden face runs level ${overFloor(level, units)}, the surface of ${quote(flat.name)} lies at ${show(surface)}${steps}; `,
      heightWays(quarter, transition, flat, trial, units),
    ),
  )
}

/** The tangent brought to the flat, the flat brought to the level of the face, or both raised. */
const heightWays = (
  { design, skinThickness }: Quarter,
  transition: Transition,
  flat: Flat,
  trial: MeetingTrial,
  units: Units,
): Told => {
  const { nearest, nearestMm, atMost, atMostMm } = offer(units)
  const [level, surface] = [transition.level.surface, flat.heights.surface]
  const flatLayer = flat.design.height.layer
  const bare = flatLayer === 'frame' ? flat.skinThickness : 0
  const lower = `a ${flatLayer} height of`
  const { layer } = design.transition.tangent
  const takes = {
    tangent: rangeAt(`ramps[quarter].transition.tangent.${layer}`),
    toe: rangeAt('ramps[quarter].toe'),
    height: flatRange(flatLayer),
  }
  const skin = layer === 'frame' ? skinThickness : 0
  const flatAt = (value: number) => ({
    from: flat.design,
    to: { ...flat.design, height: { layer: flatLayer, value } },
  })
  /** The tangent brought to a surface, that of the flat as it is or as it is typed. */
  const tangentTo = (surface: number, flatToo?: MeetingChange['flat']): Way | null => {
    const tangent = nearestMm(surface - skin)
    if (!within(tangent, takes.tangent)) return null
    const works = (quarter: QuarterDesign): boolean => trial({ quarter, ...(flatToo && { flat: flatToo }) })
    return withToe(
      tangentKey(design).typed(design, tangent),
      works,
      toesFor(transition, tangent + skin, surface),
      units,
    )
  }
  const flatTo = (height: number): Way | null =>
    level - flat.skinThickness >= leastRipped + meetWithin && within(height, takes.height)
      ? withToe(
          design,
          (quarter) => trial({ quarter, flat: flatAt(height) }),
          toesFor(transition, level, height + bare),
          units,
        )
      : null
  const both = (): string => {
    const highest = Math.min(takes.toe.most + skinThickness, takes.tangent.most + skin) - roundings - bare
    return within(atMostMm(highest), takes.height) &&
      tangentTo(atMostMm(highest) + bare, flatAt(atMostMm(highest)))
      ? `give ${quote(flat.name)} ${lower} ${atMost(highest)} or less, then raise the tangent to it`
      : noWay
  }
  const up = tangentTo(surface)
  const down = flatTo(nearestMm(level - bare))
  const ways = [
    up &&
      offering(
        `type \`tangent: { ${layer}: ${nearest(surface - skin)} }\`${up.toe}`,
        set(`transition.tangent.${layer}`, nearest(surface - skin)),
        ...up.settings,
      ),
    down &&
      offering(
        `give ${quote(flat.name)} ${lower} ${nearest(level - bare)}${down.toe}`,
        { of: { ramp: flat.name }, key: `height.${flatLayer}`, value: nearest(level - bare) },
        ...down.settings,
      ),
  ]
  return orWays(ways, up || down ? '' : both())
}
