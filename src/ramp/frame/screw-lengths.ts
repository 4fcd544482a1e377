import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { same } from '../check/offer.ts'

/** Usual lengths of wood screws, mm; common practice, no source. The short ones serve only where others come through, as do those between whole tens, so that few kinds are bought. */
const lengths = {
  mm: { short: [12, 16, 20], usual: [25, 30, 35, 40, 45, 50, 55, 60, 70, 80] },
  in: {
    short: [inch / 2, (5 * inch) / 8, (3 * inch) / 4],
    usual: [inch, 1.25 * inch, 1.625 * inch, 2 * inch, 2.5 * inch, 3 * inch],
  },
} as const

/** Drilled before a screw of 4 to 5 mm goes into wood; common practice, no source. */
export const pilotDrill = '3 mm (1/8 in)'

/** How far a screw reaches into a stud at least, and what wood stays before its point. mm */
export const screwGrip = { mm: 25, in: inch } as const
export const screwPoint = 2

/** Whether it is not of those between whole tens, of which few are bought. */
const isBought = (length: number, units: Units): boolean =>
  units === 'in' || length <= 30 || length % 10 === 0

/** The next that is bought of so much or more; null past the list. */
const boughtAtLeast = (depth: number, units: Units): number | null =>
  lengths[units].usual.find((length) => isBought(length, units) && length >= depth - same) ?? null

/** The next that is bought which goes through so much skin and far enough into the stud; null past the list. */
export const screwLength = (through: number, units: Units): number | null =>
  boughtAtLeast(through + screwGrip[units], units)

/** The next that is bought of so much or more; the longest where none is. */
export const usualAtLeast = (depth: number, units: Units): number =>
  boughtAtLeast(depth, units) ?? lengths[units].usual.at(-1)!

/** The longest that does not come through so much wood; null where none is short enough. */
export const screwWithin = (wood: number, units: Units): number | null =>
  [...lengths[units].usual, ...lengths[units].short]
    .filter((length) => length <= wood - screwPoint + same)
    .sort((a, b) => b - a)[0] ?? null
