import { nameOfOnlyOne } from '../../design/check/names.ts'
import type { QuarterDesign, Units } from '../../design/design.ts'
import { curvedOf, straightOf } from '../../design/kind-traits.ts'
import { quote } from '../../length/quote.ts'
import { wordList } from '../../length/word-list.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { highStep, stepLimit, stepWords } from '../check/practice.ts'
import { type Offered, orWays, tangentKey } from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'
import type { Flat, Quarter, Ramp } from '../ramp.ts'
import type { Transition } from '../side/transition.ts'
import { flatSurfaces } from './flat-heights.ts'
import { heightFinding } from './meeting-height.ts'
import { alikeWide, flatMet, type MeetingTrial, meetingFault, meetWithin, metOf } from './meeting-trial.ts'
import { lowestToe, noWay, overFloor, toesFor, toeUnder, withToe } from './toe-way.ts'

/** What a quarter that runs out on a flat makes of the other ramps of its design. */
export const meetingFindings = (
  quarter: Quarter,
  ramps: readonly Ramp[],
  trial: MeetingTrial,
  units: Units,
): readonly Finding[] => {
  const { design, transition } = quarter
  if (design.runOut.kind !== 'flat' || !transition) return []
  if (straightOf(ramps).length === 0) return [missing(quarter, transition, trial, units)]
  const flat = flatMet(quarter, ramps)
  return flat ? meeting(quarter, transition, flat, trial, units) : [taken(quarter, transition, ramps)]
}

/** Others are at the ends of what it would meet. */
const taken = (quarter: Quarter, { level }: Transition, ramps: readonly Ramp[]): Finding => {
  const placed = curvedOf(ramps).flatMap((other) => {
    const flat = other.name === quarter.name ? null : flatMet(other, ramps)
    if (!flat || !alikeWide(other, flat) || !alikeWide(quarter, flat)) return []
    return [{ other, flat, off: Math.abs(flat.heights.surface - level.surface) }]
  })
  // those at another height take no end from it
  const near = Math.max(meetWithin, Math.min(...placed.map(({ off }) => off))) + same
  const words = placed.flatMap(({ other, flat, off }) =>
    off <= near ? [`${quote(other.name)} at ${quote(flat.name)}`] : [],
  )
  return warn(
    'flat-missing',
    `the run-out is a flat, and a flat has two ends: ${wordList(words)} take them; nothing is bolted to this ramp's toe: add another flat (kind: flat), or say what else closes the step`,
  )
}

const missing = (
  { design, skinThickness }: Quarter,
  transition: Transition,
  trial: MeetingTrial,
  units: Units,
): Finding => {
  const { atLeast, atLeastMm, nearest, nearestMm } = offer(units)
  const level = transition.level.surface
  const { least } = flatSurfaces(skinThickness)
  const names = design.name === nameOfOnlyOne ? ', and give each ramp a `name`' : ''
  const none = 'the run-out is a flat, and the file has none: '
  const now = `${overFloor(level, units)} now`
  const otherwise = `${names}, or say what else closes the step`
  if (level >= least - same) {
    const works = (quarter: QuarterDesign): boolean => trial({ quarter, surface: level })
    const way = withToe(design, works, toesFor(transition, level, level), units)
    return warn(
      'flat-missing',
      way
        ? `${none}add one (kind: flat) with its surface where the ridden face runs level, ${now}${way.toe && `,${way.toe}`}${otherwise}`
        : `${none}${noWay}`,
    )
  }
  // the surface that is typed, and the tangent that is typed for it
  const { layer } = design.transition.tangent
  const skin = layer === 'frame' ? skinThickness : 0
  const tangent = nearestMm(atLeastMm(least) - skin)
  const surface = atLeastMm(least)
  const works = (quarter: QuarterDesign): boolean => trial({ quarter, surface })
  const way = withToe(
    tangentKey(design).typed(design, tangent),
    works,
    toesFor(transition, tangent + skin, surface),
    units,
  )
  const low = `${none}the ridden face runs level ${now}, too low for one under a skin like this: `
  return warn(
    'flat-missing',
    way
      ? `${low}type \`tangent: { ${layer}: ${nearest(tangent)} }\`${way.toe} and add a flat (kind: flat) with a surface height of ${atLeast(least)}${otherwise}`
      : `${low}${noWay}`,
  )
}

const meeting = (
  quarter: Quarter,
  transition: Transition,
  flat: Flat,
  trial: MeetingTrial,
  units: Units,
): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  const findings: Finding[] = []
  switch (meetingFault(quarter, [metOf(flat)])) {
    case 'flat-meets':
      findings.push(heightFinding(quarter, transition, flat, trial, units))
      break
    case 'toe-step':
      findings.push(stepFinding(quarter, transition, flat, trial, units))
      break
    case null:
      if (transition.toeStep - flat.heights.surface > meetWithin + same)
        findings.push(lowStepNote(quarter, transition, flat, trial, units))
  }
  if (!alikeWide(quarter, flat))
    findings.push(
      note(
        'flat-width',
        `this ramp is ${show(quarter.width)} wide and ${quote(flat.name)} is ${show(flat.width)}: their edges do not line up`,
      ),
    )
  return findings
}

/** The lowest toe that works, from where the frame's curve runs level up to `most`, mm. */
const toeTo = (
  design: QuarterDesign,
  { level }: Transition,
  most: number,
  trial: MeetingTrial,
  units: Units,
): Offered | null =>
  lowestToe(design, (quarter) => trial({ quarter }), { least: Math.max(0, level.frame), most }, units)

/** A step that a wheel takes and a hand feels, with the lowest toe that leaves none. */
const lowStepNote = (
  { design }: Quarter,
  transition: Transition,
  flat: Flat,
  trial: MeetingTrial,
  units: Units,
): Finding => {
  const { surface } = flat.heights
  const { toeStep } = transition
  const meets = toeTo(design, transition, toeUnder(transition, surface + meetWithin), trial, units)
  return note(
    'flat-step',
    tell(
      `at the toe the ridden face ends ${measured(toeStep - surface, units)} above the surface of ${quote(flat.name)}, a hand feels it; `,
      orWays(
        [meets && told`a toe of ${meets} lays them level`],
        'pack under the flat, or plane the edge that stands over',
      ),
    ),
  )
}

/** The step that is left over the flat's surface. */
const stepFinding = (
  { design }: Quarter,
  transition: Transition,
  flat: Flat,
  trial: MeetingTrial,
  units: Units,
): Finding => {
  const { surface } = flat.heights
  const { level, toeStep } = transition
  const toe = toeUnder(transition, surface + stepLimit)
  // both level at one height, and the toe on the floor
  const least = level.surface - toeUnder(transition, level.surface + stepLimit)
  const lower = toe >= -same ? toeTo(design, transition, toe, trial, units) : null
  const raise =
    toe >= -same
      ? noWay
      : `no toe is so low: bring the flat's surface and the level of the ridden face to ${offer(units).atLeast(least)} or more, with a toe of 0`
  return warn(
    'toe-step',
    tell(
      `the ridden face ends ${highStep(toeStep - surface, units)} above the surface of ${quote(flat.name)} at the toe, a wheel stops at more than ${stepWords[units]}; `,
      orWays([lower && told`lower the toe to ${lower}`], raise),
    ),
  )
}
