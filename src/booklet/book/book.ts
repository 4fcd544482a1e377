import type { Design } from '../../design/design.ts'
import type { Point } from '../../geometry/point.ts'
import type { Units } from '../../length.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { SolvedRamp, WholeDesign } from '../../ramp/ramp.ts'
import { type ScrewUse, screwSize } from '../../ramp/screws/screw-sort.ts'
import type { CostedLine } from '../../stock/list/line.ts'
import type { SheetPanels } from '../../stock/panel/panels.ts'
import { type RampScrews, screwLetter } from '../../stock/screws.ts'
import type { Supplies } from '../../stock/stock.ts'
import { type TimberPart, timberPartsOf } from '../../stock/timber-parts.ts'

/** A pattern's pages, each trimmed to its joint lines, mm of the pattern. */
export interface CoveredSide {
  readonly ramp: string
  readonly cells: readonly (readonly Point[])[]
}

/** What the booklet is written from. */
export interface BookFacts {
  readonly design: Design
  readonly solved: WholeDesign
  /** full-size drawings of the sides that carry a curve */
  readonly patterns: readonly Pattern[]
  /** every part on its panel */
  readonly sheets: readonly SheetPanels[]
  /** wood, list, weight, room, moving */
  readonly stock: Supplies & { readonly list: readonly CostedLine[] }
  /** pages to tape for the sides, on which paper, and what each shows of its pattern, as plot lays them */
  readonly tiles: number
  readonly paper: string
  readonly covered: readonly CoveredSide[]
}

/** The facts with the room of a page and the ways to say a length. */
export interface Book extends BookFacts {
  readonly units: Units
  /** what is sawn from timber */
  readonly timbers: readonly TimberPart[]
  /** of a page between its margins, mm */
  readonly width: number
  readonly tall: number
  /** whole mm, or sixteenths with a sign for the 32nd between */
  readonly show: (mm: number) => string
  /** tenths of a mm, or the same */
  readonly fine: (mm: number) => string
  /** a screw as it is sold with the letter of its box, if there is one: `4.5 × 60 (A)`, `No. 8 × 2 (B)` */
  readonly screw: (use: ScrewUse, length: number) => string
  /** whether heads must say which ramp they speak of */
  readonly several: boolean
  /** whether any ramp has a pipe */
  readonly piped: boolean
  /** a drawing, or a part with its drawings, by its name; dear, so none is made twice while pages are tried */
  readonly drawn: <T>(name: string, draw: () => T) => T
  /** names of the parts that this booklet is asked for */
  readonly asked: readonly string[]
  /** of the usual height of a drawing, so that a part ends with its page */
  readonly share: number
}

export const bookOf = (facts: BookFacts, width: number, tall: number, asked: readonly string[]): Book => {
  const { units } = facts.design
  const made = new Map<string, unknown>()
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  return {
    ...facts,
    units,
    timbers: timberPartsOf(facts.solved.ramps),
    width,
    tall,
    show: (mm) => showLength(mm, units),
    fine,
    screw: (use, length) => {
      const letter = screwLetter(facts.stock.screws, { use, length })
      return `${screwSize(use, length, units, fine)}${letter ? ` (${letter})` : ''}`
    },
    several: facts.solved.ramps.length > 1,
    piped: facts.solved.ramps.some(({ coping }) => coping !== null),
    drawn: <T>(name: string, draw: () => T): T => {
      if (!made.has(name)) made.set(name, draw())
      return made.get(name) as T
    },
    asked,
    share: 1,
  }
}

/** A ramp's screws for one use. */
export const screwsOf = ({ stock }: Book, ramp: SolvedRamp, use: ScrewUse): readonly RampScrews[] =>
  stock.screws.filter((line) => line.ramp === ramp.name && line.use === use)

/** A head that names the ramp where there are several. */
export const ofRamp = ({ several }: Book, said: string, ramp: SolvedRamp): string =>
  several ? `${said}: ${ramp.name}` : said

/** Whether any layer of skin lies on it: one may be sawn and framed alone. */
export const hasSkin = ({ skin }: SolvedRamp): boolean => skin.some(({ length }) => length > 0)

/** Drawings with dimensions on all sides are made no smaller than this share of their usual height. */
export const leastShare = 0.72
