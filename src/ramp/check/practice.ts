import { inch } from '../../geometry/inch.ts'
import type { Units } from '../../length.ts'
import { pastLimit } from './offer.ts'

/** A wheel stops at a higher step; common practice, no source. mm */
export const stepLimit = 6

/** The same in words; 1/4 in is more. */
export const stepWords = { mm: `${stepLimit} mm`, in: `${stepLimit} mm, a shade under 1/4 in` } as const

/** How high a step is at which a wheel stops. */
export const highStep = (mm: number, units: Units): string => pastLimit(mm, stepWords[units], units)

/** A front edge up to here is a feather that splinters; our own choice. mm */
export const feather = 6

/** Of wood that stays between two edges, or behind the notch; common practice, no source. mm */
export const leastWood = 40

/** On a shorter deck nobody stands; common practice, no source. mm */
export const footing = { mm: 100, in: 4 * inch } as const

/** Plywood as it is sold, thin to thick; common practice, no source. mm */
export const soldPlywood = {
  mm: [6, 9, 12, 15, 18],
  in: [inch / 4, (3 * inch) / 8, inch / 2, (5 * inch) / 8, (3 * inch) / 4],
} as const
