import type { Correction } from './correction.ts'

/** What a printer does to a page, as measured on the print: 1, 1, 0 is a true one. */
export interface Distortion {
  /** printed length over ideal length, across the page */
  readonly across: number
  /** printed length over ideal length, down the page, along the printed edge */
  readonly down: number
  /** how far the printed upright leans to the right, radians */
  readonly skew: number
}

/** Ideal offsets from the page's centre to those on the print, up to a turn of the whole page: X = a·x + c·y, Y = b·x + d·y. */
export const distortionMatrix = ({ across, down, skew }: Distortion): Correction => [
  across,
  0,
  down * Math.sin(skew),
  down * Math.cos(skew),
]

/** The inverse of a distortion: what is written so that the print comes out true. */
export const correctionOf = ({ across, down, skew }: Distortion): Correction => [
  1 / across,
  0,
  -Math.tan(skew) / across,
  1 / (down * Math.cos(skew)),
]

/**
 * Skew from the two diagonals of a printed parallelogram with sides `across` and `down` (law of cosines): `rising` runs from
 * the lower left to the upper right corner. Radians.
 */
export const skewOf = (across: number, down: number, rising: number, falling: number): number =>
  Math.asin((rising * rising - falling * falling) / (4 * across * down))
