import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { screwWithin } from '../frame/screw-lengths.ts'
import type { Splice } from './splice.ts'

/** Rows on each side of a joint, screws from the plate's ends, and from one to the next at most; common practice, no source. mm */
const rows = 2
const spacing = { mm: { end: 25, most: 100 }, in: { end: inch, most: 4 * inch } } as const

/** Screws that hold one plate while its glue sets and after; their length, null where no usual one is short enough. mm */
export const plateScrews = (
  { plate: { size } }: Splice,
  thickness: number,
  units: Units,
): { readonly count: number; readonly length: number | null } => {
  const { end, most } = spacing[units]
  const each = 1 + Math.max(1, Math.ceil((size[1] - 2 * end) / most))
  return { count: 2 * rows * each, length: screwWithin(2 * thickness, units) }
}
