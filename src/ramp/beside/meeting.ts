import { nameOfOnlyOne } from '../../design/check/names.ts'
import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rangeAt } from '../../design/schema.ts'
import { quote } from '../../length/quote.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { firstThat, manyFaults, orWays, tangentKey, toeKey } from '../check/remedy.ts'
import { type Offer, offering, set, tell, told } from '../check/told.ts'
import { leastRipped } from '../frame/stud.ts'
import type { Flat, Quarter } from '../ramp.ts'
import type { Transition } from '../side/transition.ts'
import { flatRange, flatSurfaces } from './flat-heights.ts'
import {
  type MeetingChange,
  type MeetingTrial,
  meetingFault,
  meetWithin,
  metOf,
  nearestFlat,
} from './meeting-trial.ts'
import { stepLimit } from './toe-step.ts'

/** Ramps whose widths differ by less line up, mm. */
const alikeWithin = 1

/** What tangent and toe together lose and gain when they are typed in sixteenths of an inch, mm. */
const roundings = 3

const within = (mm: number, { least, most }: Range): boolean => mm >= least - same && mm <= most + same

/** What a quarter that runs out on a flat makes of the flats of its design. */
export const meetingFindings = (
  quarter: Quarter,
  flats: readonly Flat[],
  trial: MeetingTrial,
  units: Units,
): readonly Finding[] => {
  const { design, transition } = quarter
  if (design.runOut.kind !== 'flat' || !transition) return []
  return flats.length === 0
    ? [missing(quarter, transition, trial, units)]
    : meeting(quarter, transition, flats, trial, units)
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

/** What else the toe is to be, as words, and as what is typed. */
interface Way {
  readonly toe: string
  readonly settings: Offer
}

/** The toe is left where it works, else the nearest of those that a flat so high asks for. */
const withToe = (
  design: QuarterDesign,
  works: (changed: QuarterDesign) => boolean,
  range: Range,
  units: Units,
): Way | null => {
  const { toe } = design
  if (toe >= range.least - same && toe <= range.most + same && works(design)) return { toe: '', settings: [] }
  const towards = toe < range.least ? 1 : -1
  const found = firstThat(
    works,
    design,
    { ...toeKey, range },
    towards > 0 ? range.least : Math.min(toe, range.most),
    towards,
    units,
  )
  return found && { toe: ` with a toe of ${found.words}`, settings: [set('toe', found.words)] }
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

/** How high over the floor; nothing is no height. */
const overFloor = (level: number, units: Units): string =>
  Math.abs(level) <= same
    ? 'on the floor'
    : `${measured(Math.abs(level), units)} ${level > 0 ? 'above' : 'below'} the floor`

/** Said where no toe and tangent alone puts it right. */
const noWay = `say what else closes the step (run-out), or first see to what stops; ${manyFaults}`

const meeting = (
  quarter: Quarter,
  transition: Transition,
  flats: readonly Flat[],
  trial: MeetingTrial,
  units: Units,
): readonly Finding[] => {
  const flat = nearestFlat(
    transition.level.surface,
    quarter.width,
    flats.map((one) => ({ ...metOf(one), one })),
  )!.one
  const show = (mm: number): string => measured(mm, units)
  const findings: Finding[] = []
  switch (meetingFault(quarter, flats.map(metOf))) {
    case 'flat-meets':
      findings.push(heightFinding(quarter, transition, flat, trial, units))
      break
    case 'toe-step':
      findings.push(stepFinding(quarter, transition, flat, trial, units))
  }
  if (Math.abs(flat.width - quarter.width) > alikeWithin + same)
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
  trial: MeetingTrial,
  units: Units,
): Finding => {
  const { nearest, nearestMm, atMost, atMostMm } = offer(units)
  const show = (mm: number): string => measured(mm, units)
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
  const up = tangentTo(surface)
  const height = nearestMm(level - bare)
  const down =
    level - flat.skinThickness >= leastRipped + meetWithin && within(height, takes.height)
      ? withToe(
          design,
          (quarter) => trial({ quarter, flat: flatAt(height) }),
          toesFor(transition, level, height + bare),
          units,
        )
      : null
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
  const over = transition.toeStep - surface
  const steps =
    over > stepLimit + same
      ? `, and at the toe the face ends ${show(over)} above it (a wheel stops at more than ${show(stepLimit)})`
      : ''
  const first = (): string => {
    const highest = Math.min(takes.toe.most + skinThickness, takes.tangent.most + skin) - roundings - bare
    return within(atMostMm(highest), takes.height) &&
      tangentTo(atMostMm(highest) + bare, flatAt(atMostMm(highest)))
      ? `give ${quote(flat.name)} ${lower} ${atMost(highest)} or less, then raise the tangent to it`
      : noWay
  }
  return warn(
    'flat-meets',
    tell(
      `the ridden face runs level ${overFloor(level, units)}, the surface of ${quote(flat.name)} lies at ${show(surface)}${steps}; `,
      orWays(ways, up || down ? '' : first()),
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
  const show = (mm: number): string => measured(mm, units)
  const toe = toeUnder(transition, surface + stepLimit)
  // both level at one height, and the toe on the floor
  const least = level.surface - toeUnder(transition, level.surface + stepLimit)
  const lower =
    toe >= -same ? firstThat((quarter) => trial({ quarter }), design, toeKey, toe, -1, units) : null
  const raise =
    toe >= -same
      ? noWay
      : `no toe is so low: bring the flat's surface and the level of the ridden face to ${offer(units).atLeast(least)} or more, with a toe of 0`
  return warn(
    'toe-step',
    tell(
      `the ridden face ends ${show(toeStep - surface)} above the surface of ${quote(flat.name)} at the toe, a wheel stops at more than ${show(stepLimit)}; `,
      orWays([lower && told`lower the toe to ${lower}`], raise),
    ),
  )
}
