import { nameOfOnlyOne } from '../../design/check/names.ts'
import type { Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { quote } from '../../length/quote.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { leastRipped } from '../frame/stud.ts'
import type { Flat, Quarter } from '../ramp.ts'
import type { Transition } from '../side/transition.ts'
import { flatRange, flatSurfaces } from './flat-heights.ts'
import { stepLimit } from './toe-step.ts'

/** A ridden face and a flat this near in height are the same to a wheel, mm. */
const meetWithin = 1

/** Ramps whose widths differ by less line up, mm. */
const alikeWithin = 1

/** What tangent and toe together lose and gain when they are typed in sixteenths of an inch, mm. */
const roundings = 3

const within = (mm: number, { least, most }: Range): boolean => mm >= least - same && mm <= most + same

/** What a quarter that runs out on a flat makes of the flats of its design. */
export const meetingFindings = (
  quarter: Quarter,
  flats: readonly Flat[],
  units: Units,
): readonly Finding[] => {
  const { design, transition } = quarter
  if (design.runOut.kind !== 'flat' || !transition) return []
  return flats.length === 0
    ? [missing(quarter, transition, units)]
    : meeting(quarter, transition, flats, units)
}

/** Toes with which a face that runs level at a height ends no farther above a surface than a wheel takes, mm. */
const toesFor = (transition: Transition, level: number, surface: number): Range => {
  const toe = rangeAt('ramps[quarter].toe')
  const up = level - transition.level.surface
  return {
    least: Math.max(toe.least, transition.level.frame + up),
    most: Math.min(toe.most, toeUnder(transition, surface + stepLimit - up) + up),
  }
}

/** The toe over which the ridden face lies so high; the lowest there is where it never comes so low. */
const toeUnder = ({ curve, face, level }: Transition, height: number): number =>
  curve.point(face.placeAtHeight(height) ?? level.place).y

/** The nearest of them as words, none where the toe is one already; null where none can be typed. */
const toeWords = (toe: number, { least, most }: Range, units: Units): string | null => {
  if (toe >= least - same && toe <= most + same) return ''
  const { atLeast, atLeastMm, atMost } = offer(units)
  if (atLeastMm(least) > most + same) return null
  return ` with a toe of ${toe < least ? atLeast(least) : atMost(most)}`
}

const missing = ({ design, skinThickness }: Quarter, transition: Transition, units: Units): Finding => {
  const { atLeast, atLeastMm, nearest, nearestMm } = offer(units)
  const level = transition.level.surface
  const { least } = flatSurfaces(skinThickness)
  const names = design.name === nameOfOnlyOne ? ', and give each ramp a `name`' : ''
  const otherwise = `${names}, or say what else closes the step`
  const none = 'the run-out is a flat, and the file has none: '
  const now = `${measured(level, units)} above the floor now`
  if (level >= least - same) {
    const toe = toeWords(design.toe, toesFor(transition, level, level), units) ?? ''
    return warn(
      'flat-missing',
      `${none}add one (kind: flat) with its surface where the ridden face runs level, ${now}${toe && `,${toe}`}${otherwise}`,
    )
  }
  // the surface that is typed, and the tangent that is typed for it
  const { layer } = design.transition.tangent
  const skin = layer === 'frame' ? skinThickness : 0
  const tangent = atLeastMm(least) - skin
  const toe =
    toeWords(design.toe, toesFor(transition, nearestMm(tangent) + skin, atLeastMm(least)), units) ?? ''
  return warn(
    'flat-missing',
    `${none}the ridden face runs level ${now}, too low for one under a skin like this: ` +
      `type \`tangent: { ${layer}: ${nearest(tangent)} }\`${toe} and add a flat (kind: flat) with a surface height of ${atLeast(least)}${otherwise}`,
  )
}

const meeting = (
  quarter: Quarter,
  transition: Transition,
  flats: readonly Flat[],
  units: Units,
): readonly Finding[] => {
  const level = transition.level.surface
  const off = ({ heights }: Flat): number => Math.abs(heights.surface - level)
  const wider = ({ width }: Flat): number => Math.abs(width - quarter.width)
  const flat = flats.reduce((best, one) => {
    const nearer = off(one) - off(best)
    return (Math.abs(nearer) > same ? nearer : wider(one) - wider(best)) < 0 ? one : best
  })
  const show = (mm: number): string => measured(mm, units)
  const findings: Finding[] = []
  if (off(flat) > meetWithin + same) findings.push(heightFinding(quarter, transition, flat, units))
  else findings.push(...stepFindings(transition, flat, units))
  if (wider(flat) > alikeWithin + same)
    findings.push(
      note(
        'flat-width',
        `this ramp is ${show(quarter.width)} wide and ${quote(flat.name)} is ${show(flat.width)}: their edges do not line up`,
      ),
    )
  return findings
}

const heightFinding = (
  { design, skinThickness }: Quarter,
  transition: Transition,
  flat: Flat,
  units: Units,
): Finding => {
  const { nearest, nearestMm, atMost } = offer(units)
  const show = (mm: number): string => measured(mm, units)
  const [level, surface] = [transition.level.surface, flat.heights.surface]
  const bare = flat.design.height.layer === 'frame' ? flat.skinThickness : 0
  const lower = `a ${flat.design.height.layer} height of`
  const { layer } = design.transition.tangent
  const takes = {
    tangent: rangeAt(`ramps[quarter].transition.tangent.${layer}`),
    toe: rangeAt('ramps[quarter].toe'),
    height: flatRange(flat.design.height.layer),
  }
  const skin = layer === 'frame' ? skinThickness : 0
  /** The toe is judged by what is takes. */
  const toeFor = (level: number, surface: number): string | null =>
    toeWords(design.toe, toesFor(transition, level, surface), units)
  const tangent = surface - skin
  const height = level - bare
  const up = within(nearestMm(tangent), takes.tangent) ? toeFor(nearestMm(tangent) + skin, surface) : null
  const down =
    level - flat.skinThickness >= leastRipped + meetWithin && within(nearestMm(height), takes.height)
      ? toeFor(level, nearestMm(height) + bare)
      : null
  const ways = [
    ...(up === null ? [] : [`type \`tangent: { ${layer}: ${nearest(tangent)} }\`${up}`]),
    ...(down === null ? [] : [`give ${quote(flat.name)} ${lower} ${nearest(height)}${down}`]),
  ]
  const over = transition.toeStep - surface
  const steps =
    over > stepLimit + same
      ? `, and at the toe the face ends ${show(over)} above it (a wheel stops at more than ${show(stepLimit)})`
      : ''
  const highest = Math.min(
    takes.toe.most + skinThickness,
    takes.tangent.most + (layer === 'frame' ? skinThickness : 0),
  )
  const first = `give ${quote(flat.name)} ${lower} ${atMost(highest - roundings - bare)} or less, then raise the tangent to it`
  return warn(
    'flat-meets',
    `the ridden face runs level ${show(level)} above the floor, the surface of ${quote(flat.name)} lies at ${show(surface)}${steps}; ` +
      (ways.length > 0 ? ways.join(', or ') : first),
  )
}

/** The step that is left over the flat's surface. */
const stepFindings = (transition: Transition, flat: Flat, units: Units): readonly Finding[] => {
  const { surface } = flat.heights
  const step = transition.toeStep - surface
  if (step <= stepLimit + same) return []
  const show = (mm: number): string => measured(mm, units)
  const { atLeast, atMost } = offer(units)
  const toe = toeUnder(transition, surface + stepLimit)
  // both level at one height, and the toe on the floor
  const { level } = transition
  const least = level.surface - toeUnder(transition, level.surface + stepLimit)
  const way =
    toe >= -same
      ? `lower the toe to ${atMost(toe)}`
      : `no toe is so low: bring the flat's surface and the level of the ridden face to ${atLeast(least)} or more, with a toe of 0`
  return [
    warn(
      'toe-step',
      `the ridden face ends ${show(step)} above the surface of ${quote(flat.name)} at the toe, a wheel stops at more than ${show(stepLimit)}; ${way}`,
    ),
  ]
}
