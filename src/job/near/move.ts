import type { Design } from '../../design/design.ts'
import type { Units } from '../../length.ts'
import { offerSteps, same } from '../../ramp/check/offer.ts'
import type { FramedSide } from '../../ramp/kinds/quarter.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import type { Side } from '../../ramp/side/side.ts'
import type { SheetPart } from '../../stock/sheet-part.ts'

/** What parts are compared with. */
export interface Around {
  readonly design: Design
  /** of panels that can be bought, mm */
  readonly sizes: readonly (readonly [number, number])[]
  /** whether a panel less of a part's sheet can be had with it a little smaller */
  readonly mayGain: (part: Pick<SheetPart, 'sheet'>) => boolean
  /** whether the sides of the one ramp take more pages than those of the other */
  readonly fewerPages: (ramp: SolvedQuarter, changed: FramedSide) => boolean
  /** whether they may, by its side alone */
  readonly mayTakeFewer: (ramp: SolvedQuarter, changed: Side) => boolean
}

/** A figure that may be moved a little, and to which values: the nearest first, in steps that can be typed, mm. */
export interface Move {
  /** its key from the ramp: `height.deck` */
  readonly path: string
  readonly now: number
  readonly values: readonly number[]
}

/** A figure is not moved farther than to this share of it: beyond that it is another ramp. */
const least = 0.95
/** A toe is raised by no more: the curve above it shortens by several times that. mm */
const mostRaised = 15

/** A figure that is made less, to these or the next that can be typed below them. */
export const lessMove = (path: string, now: number, to: readonly number[], units: Units): Move => {
  const step = offerSteps[units]
  const counts = [...new Set(to.map((mm) => Math.floor(mm / step + same)))]
  return {
    path,
    now,
    values: counts
      .filter((count) => count * step < now - same && count * step >= now * least - same)
      .sort((a, b) => b - a)
      .map((count) => count * step),
  }
}

/** A toe that is raised to these. */
export const toeMove = (now: number, to: readonly number[]): Move => ({
  path: 'toe',
  now,
  values: [...new Set(to)].filter((mm) => mm > now + same).sort((a, b) => a - b),
})

/** The most, in steps and down to the least, that holds; none where the least does not. */
export const mostThat = (now: number, units: Units, holds: (mm: number) => boolean): readonly number[] =>
  nearestThat(now, now * least, units, holds)

/** The least toe above this one that holds. */
export const leastToeThat = (now: number, units: Units, holds: (mm: number) => boolean): readonly number[] =>
  nearestThat(now, now + mostRaised, units, holds)

/** The nearest to `now` on the way to `last` that holds, where what lies beyond it holds too. */
const nearestThat = (
  now: number,
  last: number,
  units: Units,
  holds: (mm: number) => boolean,
): readonly number[] => {
  const step = offerSteps[units]
  const way = last < now ? -1 : 1
  const end = way * Math.floor((way * last) / step + same) * step
  return way * (end - now) < step - same || !holds(end) ? [] : [nearestBetween(now, end, units, holds)]
}

/** The nearest to `bad` on the way to `good`, which holds and can be typed, that holds too. */
export const nearestBetween = (
  bad: number,
  good: number,
  units: Units,
  holds: (mm: number) => boolean,
): number => {
  const step = offerSteps[units]
  const way = good < bad ? -1 : 1
  const last = Math.round(good / step)
  // steps before `last`: one holds, the other does not
  let [holding, not] = [0, Math.ceil((way * (good - bad)) / step - same)]
  while (not - holding > 1) {
    const middle = Math.ceil((holding + not) / 2)
    if (holds((last - way * middle) * step)) holding = middle
    else not = middle
  }
  return (last - way * holding) * step
}
