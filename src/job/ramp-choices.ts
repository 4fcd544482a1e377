import type { Stock } from '../design/design.ts'
import { isCurved } from '../design/kind-traits.ts'
import { thinSide } from '../design/section.ts'
import type { Units } from '../length.ts'
import { firstThat, toeKey } from '../ramp/check/remedy.ts'
import { blunt } from '../ramp/hazard/feather.ts'
import { frameWithout } from '../ramp/kinds/quarter.ts'
import type { Quarter, Ramp } from '../ramp/ramp.ts'
import { solveTransition } from '../ramp/side/solve-transition.ts'
import { type SteepChoice, steepChoices } from '../ramp/steep-choices.ts'

/** The lowest toe that something allows, in steps that can be typed, and what it leaves. mm */
export interface ToeChoice {
  /** the first stud whole and flush with the front; or an edge that a saw leaves whole */
  readonly by: 'stud' | 'saw'
  readonly toe: number
  readonly toeStep: number
  readonly bridge: number
}

/** What else a quarter could be, to judge it by. */
export interface RampChoices {
  /** where each word for the lip begins */
  readonly words: readonly SteepChoice[]
  readonly toes: readonly ToeChoice[]
}

/** null for what has no curve. */
export const rampChoices = (ramp: Ramp, units: Units, stock: Stock): RampChoices | null =>
  isCurved(ramp) && ramp.transition
    ? { words: steepChoices(ramp.design), toes: toeChoices(ramp, units, stock) }
    : null

/** Each tried on the whole ramp; none where no toe is high enough. */
const toeChoices = ({ design, transition }: Quarter, units: Units, stock: Stock): readonly ToeChoice[] => {
  const { level, toeAngle } = transition!
  const thin = thinSide(design.studs.section)
  const lowest = Math.max(0, level.frame)
  const choice = (by: ToeChoice['by'], least: number): readonly ToeChoice[] => {
    const from = Math.max(lowest, least)
    const found = firstThat(
      (changed) => {
        // a first stud that is not whole, or not flush with the front, is told
        const frame = frameWithout(by === 'stud' ? ['stud-toe'] : [], changed, units, stock)
        return frame !== null && (by === 'saw' || frame.studs.length > 0)
      },
      design,
      toeKey,
      from,
      1,
      units,
    )
    const solved = found && solveTransition({ ...design, toe: found.mm }, units).transition
    return solved ? [{ by, toe: found.mm, toeStep: solved.toeStep, bridge: solved.bridge }] : []
  }
  return [...choice('stud', thin * Math.cos(toeAngle)), ...choice('saw', blunt[units])]
}
