import type { QuarterDesign, Units } from '../design/design.ts'
import { type Draft, note, type Trial, warn } from './check.ts'
import { flatSurfaces } from './flat-heights.ts'
import { listed, measured, offer, rounded, same } from './offer.ts'
import { firstThat, manyFaults, orWays, tangentKey, toeKey } from './retype.ts'

/** A wheel stops at a higher step; common practice, no source. mm */
export const stepLimit = 6

/** Of a run-out sheet: what laps on the skin, what lies on the floor, and what may hang free; common practice, no source. mm */
const runOutPractice = {
  mm: { lap: 50, flat: 75, hand: 100 },
  in: { lap: 50.8, flat: 76.2, hand: 101.6 },
} as const

/** A lower toe is offered where it leaves less than this part of what the run-out bridges. */
const worthTyping = 0.8

/** The sheet that is meant where none is said, mm. */
const steel = { thickness: 1.5, material: 'steel' } as const

/** The foot of the curve. Lengths mm, angles radians. */
interface Foot {
  /** height of the centre */
  readonly c: number
  readonly frameRadius: number
  readonly surfaceRadius: number
  /** height of the frame's curve where it runs level */
  readonly lowest: number
  readonly toeAngle: number
  readonly toeStep: number
  readonly bridge: number
}

/** The step that a wheel meets at the toe, and what closes it; a flat is seen to where it is known. */
export const toeFindings = (ramp: QuarterDesign, foot: Foot, units: Units): readonly Draft[] => {
  const { c, surfaceRadius, toeStep } = foot
  const over = toeStep > stepLimit + same
  const level = c - surfaceRadius
  const show = (mm: number): string => measured(mm, units)
  const stops = `a wheel stops at more than ${show(stepLimit)}; `
  switch (ramp.runOut.kind) {
    case 'flat':
      return []
    case 'stepped':
      return ramp.skin.length > 0 ? [steppedFinding(ramp, foot, stops, units)] : []
    case 'none':
      return over
        ? [
            warn(
              'toe-step',
              (trial: Trial) =>
                `the ridden face ends ${show(toeStep)} above the floor at the toe, ${stops}` +
                (level > stepLimit + same
                  ? levelWay(trial, ramp, level, units)
                  : sheetWay(foot, units) + lowerWay(trial, ramp, foot, units)),
            ),
          ]
        : []
    case 'sheet':
      if (!over) return []
      return level > stepLimit + same
        ? [warn('toe-step', (trial: Trial) => levelWay(trial, ramp, level, units))]
        : [note('toe-step', (trial: Trial) => sheetWords(trial, ramp, foot, units))]
    default:
      return ramp.runOut satisfies never
  }
}

const sheetKey = (units: Units): string => `run-out: { sheet: ${units === 'mm' ? '1.5' : '1/16'} steel }`

const sheetWay = ({ bridge }: Foot, units: Units): string =>
  `say what closes it (${sheetKey(units)}, about ${rounded(bridge, units)} long)`

/** The toe over which the ridden face lies at the limit; below the lowest point or the floor there is none. */
const lowerWay = (
  trial: Trial,
  ramp: QuarterDesign,
  { c, frameRadius, surfaceRadius, lowest }: Foot,
  units: Units,
): string => {
  const cos = (c - stepLimit) / surfaceRadius
  const toe = c - frameRadius * cos
  const found =
    cos < 1 && toe > Math.max(0, lowest) + 2 ? firstThat(trial, ramp, toeKey, toe, -1, units) : null
  return found ? `, or lower the toe to ${found.shown}` : ''
}

/** A face that runs level above the floor ends in a step, whatever leads down to its tangent point. */
const levelWay = (trial: Trial, ramp: QuarterDesign, level: number, units: Units): string => {
  const sheeted: QuarterDesign =
    ramp.runOut.kind === 'sheet' ? ramp : { ...ramp, runOut: { kind: 'sheet', sheet: steel } }
  const lower = firstThat(trial, sheeted, tangentKey(ramp), ramp.transition.tangent.height - level, -1, units)
  const also = ramp.runOut.kind === 'sheet' ? '' : ` with a sheet (${sheetKey(units)})`
  const skin = ramp.skin.reduce((sum, { thickness }) => sum + thickness, 0)
  const { least, most } = flatSurfaces(skin)
  return (
    `the ridden face runs level ${measured(level, units)} above the floor, so a run-out sheet would end in a step; ` +
    orWays(
      [
        lower && `lower the tangent to ${lower.shown}${also}: there it runs out on the floor`,
        level >= least && level <= most ? 'let a flat meet it (run-out: flat)' : null,
      ],
      `lower the tangent; ${manyFaults}`,
    )
  )
}

/** Layers stepped back: the lowest layer's face over the floor, then the thickness of each layer on it. */
const steppedFinding = (ramp: QuarterDesign, foot: Foot, stops: string, units: Units): Draft => {
  const { c, frameRadius, surfaceRadius, toeAngle } = foot
  const [lowest, ...upper] = ramp.skin.map(({ thickness }) => thickness)
  const steps = [c - (frameRadius - lowest!) * Math.cos(toeAngle), ...upper]
  const words = `the skin rises at the toe in steps of ${listed(steps, units)}`
  if (Math.max(...steps) <= stepLimit + same) return note('toe-step', words)
  const level = c - surfaceRadius
  return warn('toe-step', (trial: Trial) =>
    level > stepLimit + same
      ? `${words}, ${stops}${levelWay(trial, ramp, level, units)}`
      : `${words}, ${stops}take thinner layers and a lower toe, or ${sheetWay(foot, units)}`,
  )
}

/** How long a run-out sheet is cut, and the least toe that leaves it less to bridge. */
const sheetWords = (trial: Trial, ramp: QuarterDesign, foot: Foot, units: Units): string => {
  const { c, frameRadius, surfaceRadius, lowest, toeAngle, toeStep, bridge } = foot
  const { lap, flat, hand } = runOutPractice[units]
  const bridgeAt = (toe: number): number => surfaceRadius * Math.acos(Math.min(1, (c - toe) / frameRadius))
  // the lowest that a flat stud fits behind, and the highest worth typing: the bridge shrinks with the toe
  const least = Math.max(lowest, Math.min(...ramp.studs.section) * Math.cos(toeAngle))
  const most = Math.min(
    c - frameRadius * Math.cos((worthTyping * bridge) / surfaceRadius),
    ramp.toe - 2 * same,
  )
  const lower = firstThat(trial, ramp, { ...toeKey, range: { least, most } }, least, 1, units)
  const shorter = lower
    ? `; a toe of ${lower.shown}, the least for a whole first stud, leaves ${rounded(bridgeAt(lower.mm), units)}`
    : ''
  return (
    `the run-out bridges ${rounded(bridge, units)} from the toe, ${rounded(toeStep, units)} above the floor: ` +
    `cut its sheet ${offer(units).atLeast(bridge + lap + flat)} long (${rounded(lap, units)} screwed on the skin, ${rounded(flat, units)} flat on the floor)` +
    `${bridge > hand ? ` and pack under it where over ${rounded(hand, units)} hangs free` : ''}${shorter}`
  )
}
