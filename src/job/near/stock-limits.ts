import type { Design } from '../../design/design.ts'
import { same } from '../../ramp/check/offer.ts'
import { squared } from '../../stock/timber/boards.ts'

/** What is too long by no more than this share of its stock is a near miss. */
const nearest = 0.05
/** so many pieces of one stock are looked at */
const mostPieces = 8

/** The longest that pieces may be so that one stock gives so many, mm; one that is as long as the stock keeps its ends. */
const limits = (stock: number, ends: number, kerf: number): readonly number[] => [
  stock,
  ...Array.from({ length: mostPieces }, (_, i) => (stock - 2 * ends - i * kerf) / (i + 1)),
]

const missed = (length: number, all: readonly number[]): readonly number[] =>
  all.filter((limit) => limit > 0 && length > limit + same && length <= limit * (1 + nearest))

/** Limits of a panel's sides that a length just misses. */
export const panelLimits = (
  length: number,
  sizes: readonly (readonly [number, number])[],
  { trim, kerf }: Pick<Design['stock'], 'trim' | 'kerf'>,
): readonly number[] =>
  missed(
    length,
    // pieces in a row keep the panel's ends where that saves a panel, but beside curved ones
    sizes.flatMap((size) =>
      size.flatMap((side) => [...new Set([...limits(side, 0, kerf), ...limits(side, trim, kerf)])]),
    ),
  )

/** Limits of the timbers that are sold. */
export const timberLimits = (length: number, { stock, units }: Design): readonly number[] =>
  missed(
    length,
    stock.timber.flatMap((board) => limits(board, squared[units], stock.kerf)),
  )
