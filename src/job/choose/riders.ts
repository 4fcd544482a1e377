import type { Units } from '../../design/design.ts'
import { type Steepness, steepnesses } from '../../ramp/steepness.ts'

/** Who rides: how old, or how easy it is to be. */
export type Rider =
  | { readonly kind: 'age'; readonly age: number }
  | { readonly kind: 'word'; readonly word: Steepness }

/** What is tried for a rider: from the lowest and mellowest to the highest and steepest. */
export interface Span {
  /** of the deck, in the units of the design */
  readonly heights: Readonly<Record<Units, readonly [lowest: number, highest: number]>>
  /** radius over height */
  readonly ratios: readonly [mellowest: number, steepest: number]
}

interface Band extends Span {
  /** the last year of age */
  readonly to: number
}

/** How high and how steep for which age: custom, no source. None is higher than the 30 in above which a guard is asked for. */
const bands: readonly Band[] = [
  { to: 5, heights: { mm: [250, 300], in: [10, 12] }, ratios: [4.2, 3.1] },
  { to: 8, heights: { mm: [350, 500], in: [14, 20] }, ratios: [3.5, 2.55] },
  { to: 11, heights: { mm: [450, 650], in: [18, 26] }, ratios: [3.2, 2.05] },
  { to: 14, heights: { mm: [550, 700], in: [22, 28] }, ratios: [2.8, 1.8] },
  { to: 120, heights: { mm: [600, 750], in: [24, 30] }, ratios: [2.6, 1.55] },
]

/** Where nothing says who rides. */
export const usualAge = 9

export const bandOf = (age: number): Band => bands.find(({ to }) => age <= to) ?? bands.at(-1)!

/** A word is taken at any height that is usual. */
const anyHeight = { mm: [400, 700], in: [16, 28] } as const

/** The whole of a word, a little within its ends, so that a rounded radius keeps it. */
export const wordRatios = (word: Steepness): Span['ratios'] => {
  const at = steepnesses.findIndex((own) => own.word === word)
  const { least } = steepnesses[at]!
  const most = steepnesses[at - 1]?.least ?? least + 0.8
  const inside = (most - least) * 0.12
  return [most - inside, least + inside]
}

/** All words but the steepest. */
const allRatios = [3.2, 1.6] as const

/** What is tried where the height is said or not. */
export const spanOf = (rider: Rider | null, heightSaid: boolean): Span => {
  switch (rider?.kind) {
    case 'age':
      return bandOf(rider.age)
    case 'word':
      return { heights: anyHeight, ratios: wordRatios(rider.word) }
    case undefined:
      return heightSaid ? { heights: anyHeight, ratios: allRatios } : bandOf(usualAge)
    default:
      return rider satisfies never
  }
}
