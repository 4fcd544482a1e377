import type { QuarterDesign, Sheet, Units } from '../../design/design.ts'
import { thinSide } from '../../design/section.ts'
import { inch } from '../../geometry/inch.ts'
import { showThickness } from '../../length/thickness.ts'
import { type Draft, note, type Trial, warn } from '../check/check.ts'
import { listed, measured, offer, rounded, same } from '../check/offer.ts'
import { feather, highStep, stepLimit, stepWords } from '../check/practice.ts'
import { firstThat, manyFaults, orWays, tangentKey, toeKey } from '../check/remedy.ts'
import { offering, type Said, set, type Told, tell, told, typedWith } from '../check/told.ts'
import type { ClosingSheet } from '../closing-sheet.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import type { Transition } from '../side/transition.ts'
import { flatSurfaces } from './flat-heights.ts'

/** Of a run-out sheet: what laps on the skin, what lies on the floor, and what may hang free; common practice, no source. mm */
const runOutPractice = {
  mm: { lap: 50, flat: 75, hand: 100 },
  in: { lap: 2 * inch, flat: 3 * inch, hand: 4 * inch },
} as const

/** What of a run-out sheet laps on the skin, mm. */
export const runOutLap = (units: Units): number => runOutPractice[units].lap

/** What of it lies on the floor at least, mm. */
export const runOutFloor = (units: Units): number => runOutPractice[units].flat

/** What of it may hang free at most, mm. */
export const runOutFree = (units: Units): number => runOutPractice[units].hand

/** Toe to tail of the sheet that closes the step, mm: what it bridges, and what lies on the skin and on the floor. */
export const runOutLength = ({ bridge }: Pick<Transition, 'bridge'>, units: Units): number => {
  const { lap, flat } = runOutPractice[units]
  return offer(units).atLeastMm(bridge + lap + flat)
}

/** How far before the toe corner a sheet that runs out on the floor ends, mm; none where something else closes the step. */
export const runOutFront = (ramp: QuarterDesign, { curve, level }: Transition, units: Units): number =>
  ramp.runOut.kind === 'sheet' ? Math.max(0, runOutPractice[units].flat - curve.point(level.place).x) : 0

/** A lower toe is offered where it leaves less than this part of what the run-out bridges. */
const worthTyping = 0.8

/** How high the ridden face ends above the floor, and what closes that step; one that a flat closes is for the flat to say. */
export const toeStepFindings = (
  ramp: QuarterDesign,
  transition: Transition,
  closing: ClosingSheet,
  units: Units,
): readonly Draft[] => {
  const high = transition.toeStep > stepLimit + same
  switch (ramp.runOut.kind) {
    case 'none':
      return high ? [openStep(ramp, transition, closing, units)] : []
    case 'stepped':
      return ramp.skin.length > 0 ? [layerSteps(ramp, transition, closing, units)] : []
    case 'sheet':
      if (!high) return []
      return runsHigh(transition)
        ? [warn('toe-step', (trial: Trial) => levelWay(trial, ramp, transition, closing, units))]
        : [bridgedStep(ramp, transition, units)]
    case 'flat':
      return []
    default:
      return ramp.runOut satisfies never
  }
}

/** A face that runs level above the floor ends in a step, whatever leads down to its tangent point. */
const runsHigh = ({ level }: Transition): boolean => level.surface > stepLimit + same

/** As it is typed. */
const sheetText = ({ thickness, material }: Sheet, units: Units): string =>
  `{ sheet: ${showThickness(thickness, units)} ${material} }`

/** What is typed, in brackets, and what is done with the sheet behind them: cut to `length` where that is known. */
const closingWords = ({ sheet, rolled }: ClosingSheet, length: number | null, units: Units): string => {
  const done = [
    ...(length === null ? [] : [`cut ${rounded(length, units)} long`]),
    ...(rolled ? ['rolled to the radius'] : []),
  ]
  return `(run-out: ${sheetText(sheet, units)})${done.length > 0 ? `, ${done.join(' and ')}` : ''}`
}

/** What closes a step, as it is typed. */
const sheetWay = (closing: ClosingSheet, transition: Transition, units: Units): Told =>
  offering(
    `say what closes it ${closingWords(closing, runOutLength(transition, units), units)}`,
    set('run-out', sheetText(closing.sheet, units)),
  )

/** A lower tangent with a sheet, or a flat. */
const levelWay = (
  trial: Trial,
  ramp: QuarterDesign,
  transition: Transition,
  closing: ClosingSheet,
  units: Units,
): Told => {
  const level = transition.level.surface
  const has = ramp.runOut.kind === 'sheet'
  const sheeted: QuarterDesign = has ? ramp : { ...ramp, runOut: { kind: 'sheet', sheet: closing.sheet } }
  const lower = firstThat(trial, sheeted, tangentKey(ramp), ramp.transition.tangent.height - level, -1, units)
  const { least, most } = flatSurfaces(skinThickness(ramp))
  return tell(
    `the ridden face runs level ${measured(level, units)} above the floor, so a run-out sheet would end in a step; `,
    orWays(
      [
        lower &&
          (has
            ? told`lower the tangent to ${lower}: there it runs out on the floor`
            : typedWith(
                told`lower the tangent to ${lower} with a sheet ${closingWords(closing, null, units)}: there it runs out on the floor`,
                set('run-out', sheetText(closing.sheet, units)),
              )),
        level >= least - same && level <= most
          ? offering('let a flat meet it (run-out: flat)', set('run-out', 'flat'))
          : null,
      ],
      `lower the tangent; ${manyFaults}`,
    ),
  )
}

const openStep = (
  ramp: QuarterDesign,
  transition: Transition,
  closing: ClosingSheet,
  units: Units,
): Draft => {
  const { curve, face, level, toeStep } = transition
  // the toe over which the ridden face lies at the limit; below the lowest point or the floor there is none
  const place = face.placeAtHeight(stepLimit)
  const toe = place === null ? 0 : curve.point(place).y
  const lower = (trial: Trial): Said => {
    // one thin as a feather would be told to be higher again
    const blunter = { ...toeKey, range: { ...toeKey.range, least: feather + 2 * same } }
    const found = toe > Math.max(0, level.frame) + 2 ? firstThat(trial, ramp, blunter, toe, -1, units) : null
    return found ? told`, or lower the toe to ${found}` : ''
  }
  return warn('toe-step', (trial: Trial) =>
    tell(
      `the ridden face ends ${highStep(toeStep, units)} above the floor at the toe, a wheel stops at more than ${stepWords[units]}; `,
      runsHigh(transition)
        ? levelWay(trial, ramp, transition, closing, units)
        : tell(sheetWay(closing, transition, units), lower(trial)),
    ),
  )
}

const layerSteps = (
  ramp: QuarterDesign,
  transition: Transition,
  closing: ClosingSheet,
  units: Units,
): Draft => {
  const { toe, toeAngle } = transition
  // the lowest layer's face over the floor, then the thickness of each layer on it
  const [first, ...upper] = ramp.skin.map(({ thickness }) => thickness)
  const steps = [toe.y + first! * Math.cos(toeAngle), ...upper]
  const words = `the skin rises at the toe in steps of ${listed(steps, units)}`
  return Math.max(...steps) > stepLimit + same
    ? warn('toe-step', (trial: Trial) =>
        tell(
          `${words}, a wheel stops at more than ${stepWords[units]}; `,
          runsHigh(transition)
            ? levelWay(trial, ramp, transition, closing, units)
            : tell('take thinner layers and a lower toe, or ', sheetWay(closing, transition, units)),
        ),
      )
    : note('toe-step', words)
}

const bridgedStep = (ramp: QuarterDesign, transition: Transition, units: Units): Draft => {
  const { curve, face, level, toeAngle, toeStep, bridge } = transition
  const { lap, flat, hand } = runOutPractice[units]
  const show = (mm: number): string => rounded(mm, units)
  const bridgeTo = (place: number): number => face.lengthTo(place) - face.lengthTo(level.place)
  const bridgeAt = (toe: number): number => bridgeTo(curve.placeAtHeight(toe) ?? level.place)
  return note('toe-step', (trial: Trial) => {
    // the lowest that a flat stud fits behind, and the highest worth typing: the bridge shrinks with the toe
    const least = Math.max(level.frame, thinSide(ramp.studs.section) * Math.cos(toeAngle))
    const worth = curve.point(face.placeAtLength(face.lengthTo(level.place) + worthTyping * bridge)).y
    const most = Math.min(worth, ramp.toe - 2 * same)
    const lower = firstThat(trial, ramp, { ...toeKey, range: { least, most } }, least, 1, units)
    const shorter = lower
      ? told`; a toe of ${lower}, the least for a whole first stud, leaves ${show(bridgeAt(lower.mm))}`
      : ''
    return tell(
      `the run-out bridges ${show(bridge)} from the toe, ${show(toeStep)} above the floor: `,
      `cut its sheet ${show(runOutLength(transition, units))} long (${show(lap)} screwed on the skin, ${show(flat)} flat on the floor)`,
      bridge > hand ? ` and pack under it where over ${show(hand)} hangs free` : '',
      shorter,
    )
  })
}
