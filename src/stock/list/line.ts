import type { Priced } from '../../design/design.ts'

/** Where a line stands on the list; in this order. */
export const listParts = [
  'sheets',
  'timber',
  'pipe',
  'screws',
  'fittings',
  'finish',
  'tools',
  'protection',
] as const
export type ListPart = (typeof listParts)[number]

/** One thing to buy. */
export interface ListLine {
  readonly part: ListPart
  /** in the design's units, without the count: `38 × 89 timber, 2400 long` */
  readonly what: string
  readonly count: number
  /** what is counted: `panel`, `length`, `box of 100`, `piece`, `m` */
  readonly unit: string
  /** what it is for, or what it must be; empty where that is plain */
  readonly note: string
  /** what a price in the design would name */
  readonly priced: Priced | null
}

export interface CostedLine extends ListLine {
  /** of one, and of all; null where the design has no price for it */
  readonly each: number | null
  readonly cost: number | null
}
