import type { PaperName, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { pageSides } from '../../printer/page-sides.ts'

/** An upright sheet, mm. */
export interface Paper {
  readonly name: PaperName
  readonly width: number
  readonly height: number
}

interface Size {
  readonly width: number
  readonly height: number
  /** what most printers cannot print on, mm */
  readonly margin: number
  /** the next paper up that a shop has; null for the largest */
  readonly larger: PaperName | null
}

const inches = (width: number, height: number, larger: PaperName): Size => ({
  width: width * inch,
  height: height * inch,
  margin: inch / 2,
  larger,
})
const iso = (width: number, height: number, larger: PaperName | null): Size => ({
  width,
  height,
  margin: 10,
  larger,
})

/** ISO 216 for A4 … A0, ASME Y14.1 for letter and tabloid; legal is the common 8 1/2 × 14 in. */
const sizes: Readonly<Record<PaperName, Size>> = {
  letter: inches(8.5, 11, 'tabloid'),
  legal: inches(8.5, 14, 'tabloid'),
  tabloid: inches(11, 17, 'a2'),
  a4: iso(210, 297, 'a3'),
  a3: iso(297, 420, 'a2'),
  a2: iso(420, 594, 'a1'),
  a1: iso(594, 841, 'a0'),
  a0: iso(841, 1189, null),
}

export const paperOf = (name: PaperName): Paper => {
  const { width, height } = sizes[name]
  return { name, width, height }
}

/** As people write it. */
export const paperWord = (name: string): string => (/^a\d$/.test(name) ? name.toUpperCase() : name)

/** What is asked for where a design does not say, as its schema has it. */
export const usualPaper = (units: Units): PaperName => (units === 'in' ? 'letter' : 'a4')

export const largerPaper = (name: PaperName): PaperName | null => sizes[name].larger

/** Margins of the upright page, mm. */
export interface Margins {
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
}

/** Less is lost in the blur of a printer's own edge, mm. */
const edgeBlur = 0.1

/** The sides at which less is left than is asked for; in the order of --margin. */
export const sidesShort = (left: Margins, asked: Margins): readonly (keyof Margins)[] =>
  pageSides.filter((side) => asked[side] - left[side] > edgeBlur)

/** What most printers can print on: half an inch on inch papers, 10 mm on the others. */
export const defaultMargins = (name: PaperName): Margins => {
  const { margin } = sizes[name]
  return { top: margin, right: margin, bottom: margin, left: margin }
}

/** How far pages lie over each other unless said, mm. */
export const defaultOverlap = 12
