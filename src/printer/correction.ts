import type { Affine } from '../geometry/affine.ts'
import { affineThen, affineTranslate } from '../geometry/affine.ts'

/**
 * [a, b, c, d] takes an ideal offset from the page's centre to the one that is written, so that it comes out
 * true on that printer: X = a·x + c·y, Y = b·x + d·y.
 */
export type Correction = readonly [number, number, number, number]

export const noCorrection: Correction = [1, 0, 0, 1]

/** Ideal page mm to written page mm, about the page's centre. This is the one place where the correction multiplies. */
export const correctionMap = ([a, b, c, d]: Correction, width: number, height: number): Affine =>
  affineThen(
    affineThen(affineTranslate(-width / 2, -height / 2), [a, b, c, d, 0, 0]),
    affineTranslate(width / 2, height / 2),
  )
