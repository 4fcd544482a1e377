import { inch } from '../../geometry/inch.ts'
import type { Span } from './riders.ts'
import { spanOf, wordRatios } from './riders.ts'
import { type ChosenRamp, isChosen, type Target, tryTarget } from './trial.ts'
import type { Wishes } from './wishes.ts'

/** So many are answered at most, and at least where that many are found. */
const most = 5
const least = 3

const heightSteps = { mm: 10, in: inch / 2 } as const

/** How far along a span each of the first ones lies, from mellow to steep; then what lies between. */
const places = Array.from({ length: most }, (_, i) => i / (most - 1))
const between = [0.125, 0.375, 0.625, 0.875, 0.06, 0.31, 0.56, 0.81, 0.94]

/** Radius over height is moved by so much where a curve does not work as it is. */
const nudges = [1, 1.03, 0.97, 1.07, 0.93]

/** Ramps that work, from mellow to steep, no two alike: three to five, fewer where the wishes leave no more. */
export const chooseRamps = (wishes: Wishes): readonly ChosenRamp[] => {
  const found: ChosenRamp[] = []
  const add = (place: number): void => {
    const chosen = rampAt(wishes, place)
    if (chosen && !found.some(({ height, radius }) => height === chosen.height && radius === chosen.radius))
      found.push(chosen)
  }
  for (const place of places) add(place)
  for (const place of between) {
    if (found.length === 0 || found.length >= least) break
    add(place)
  }
  return found.sort((a, b) => a.lip - b.lip)
}

/** Whether there is one at all: the first that is found. */
export const anyRamp = (wishes: Wishes): ChosenRamp | null => {
  for (const place of [0.5, 0, 1, 0.25, 0.75]) {
    const chosen = rampAt(wishes, place)
    if (chosen) return chosen
  }
  return null
}

const rampAt = (wishes: Wishes, place: number): ChosenRamp | null => {
  const span = spanOf(wishes.rider, wishes.height !== null)
  const { height, ratio } = targetAt(wishes, span, place)
  const [mellow, steep] = wishes.rider?.kind === 'word' ? wordRatios(wishes.rider.word) : span.ratios
  for (const nudge of nudges) {
    const near = ratio * nudge
    if (near > mellow + 1e-9 || near < steep - 1e-9) continue
    const trial = tryTarget(wishes, { height, ratio: near })
    // a little mellower or steeper takes as much of all that is limited
    if (trial === 'past') return null
    if (isChosen(trial) && (wishes.rider?.kind !== 'word' || trial.word === wishes.rider.word)) return trial
  }
  return null
}

const targetAt = ({ units, height }: Wishes, { heights, ratios }: Span, place: number): Target => {
  const along = ([from, to]: readonly [number, number]): number => from + (to - from) * place
  const unit = units === 'mm' ? 1 : inch
  const step = heightSteps[units]
  return {
    height: height ?? Math.round((along(heights[units]) * unit) / step) * step,
    ratio: along(ratios),
  }
}
