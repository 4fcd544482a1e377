import type { PaperName } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'

/** An upright sheet, mm. */
export interface Paper {
  readonly name: PaperName
  readonly width: number
  readonly height: number
}

/** ISO 216 for A4 … A0, ASME Y14.1 for letter and tabloid; legal is the common 8 1/2 × 14 in. */
const sizes: Readonly<Record<PaperName, readonly [number, number]>> = {
  letter: [8.5 * inch, 11 * inch],
  legal: [8.5 * inch, 14 * inch],
  tabloid: [11 * inch, 17 * inch],
  a4: [210, 297],
  a3: [297, 420],
  a2: [420, 594],
  a1: [594, 841],
  a0: [841, 1189],
}

export const paperOf = (name: PaperName): Paper => ({ name, width: sizes[name][0], height: sizes[name][1] })

/** Margins of the upright page, mm. */
export interface Margins {
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
}

/** What most printers can print on: half an inch on inch papers, 10 mm on the others. */
export const defaultMargins = (name: PaperName): Margins => {
  const margin = ['letter', 'legal', 'tabloid'].includes(name) ? inch / 2 : 10
  return { top: margin, right: margin, bottom: margin, left: margin }
}

/** How far pages lie over each other unless said, mm. */
export const defaultOverlap = 12
