import { screwCounts } from '../booklet/screw-counts.ts'
import type { Design, PaperName } from '../design/design.ts'
import { curvedOf, isCurved } from '../design/kind-traits.ts'
import type { Cover } from '../page/cover/cover.ts'
import type { CoverCounts } from '../page/cover/pattern-covers.ts'
import { distinctLines } from '../pattern/side-lines.ts'
import { runOutSheet } from '../ramp/beside/run-out-sheet.ts'
import { designFigures } from '../ramp/figures.ts'
import type { Ramp, SolvedDesign, WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { boughtPanels } from '../stock/list/bought-panels.ts'
import { panelFigures } from '../stock/panel/panel-figures.ts'
import { sawSheets } from '../stock/panel/sawn-panels.ts'
import { sheetsOf } from '../stock/panel/sheets.ts'
import { partsOf } from '../stock/parts.ts'
import { type StockTaking, suppliesOf, takeStock } from '../stock/stock.ts'
import { stockFigures } from '../stock/stock-figures.ts'
import { asCuts, type RampAsCut, type RampCut } from './as-cut-words.ts'
import { coverSides } from './covering.ts'
import { usualLaying } from './laying.ts'
import { type RampChoices, rampChoices } from './ramp-choices.ts'
import { withAnswers } from './settle/answer-words.ts'
import type { Answer } from './settle/settle.ts'

/** Pages to tape for each way to cover the sides, and the one that is taken unless told. */
export type PageFigures = CoverCounts & { readonly paper: PaperName; readonly takes: Cover }

export interface FiguresJob {
  readonly solved: SolvedDesign
  /** null where there is no curve or a `stop` */
  readonly pages: PageFigures | null
  /** what is sawn from which panel; in words where that is not to be had; null where there is a `stop` */
  readonly panels: ReturnType<typeof sheetsOf> | null
  /** null where a `stop` leaves it open */
  readonly stock: StockTaking | null
  /** of each ramp, what else it could be; null for what has no curve */
  readonly choices: readonly (RampChoices | null)[]
  /** of the notches that are cut already; null where a ramp's pipe could not be solved */
  readonly asCut: readonly (RampAsCut | null)[]
  /** figures that were left to the program */
  readonly answers: readonly Answer[]
}

/** What a design comes out as. `cuts`: notches that are cut already. `answers`: what was found for it. */
export const figuresJob = (
  design: Design,
  cuts: readonly RampCut[] = [],
  answers: readonly Answer[] = [],
): FiguresJob => {
  const solved = withAnswers(solveDesign(design), answers, design.units)
  const pages = solved.stopped || curvedOf(solved.ramps).length === 0 ? null : pagesOf(design, solved)
  const parts = solved.stopped ? null : partsOf(design, solved)
  const panels = parts && sheetsOf(design, parts)
  const stock = solved.stopped ? null : takeStock(design, solved, parts!)
  const choices = solved.ramps.map((ramp) => rampChoices(ramp, design.units, design.stock))
  return { solved, pages, panels, stock, choices, asCut: asCuts(cuts, solved), answers }
}

/** The figures as scripts read them: mm and degrees, told in docs/architecture.md. */
export const figuresRecord = (
  design: Design,
  { solved, pages, panels, stock, choices, asCut, answers }: FiguresJob,
) => {
  const sheets = panels && 'sheets' in panels ? sawSheets(panels.sheets, design.stock) : null
  const bought = sheets && boughtPanels(sheets, design.units)
  return {
    ...withMore(design, solved, choices),
    ...stockFigures(stock && !solved.stopped ? suppliesOf(design, solved, stock, bought) : null, design),
    ...(asCut.length > 0 && { asCut }),
    ...(answers.length > 0 && { solved: answers.map(answerRecord) }),
    pages,
    panels: sheets && panelFigures(sheets),
  }
}

/** What else a ramp could be, its run-out; layers and deck board with their screws counted by length: some take shorter ones than the layer's own. */
const withMore = (design: Design, solved: SolvedDesign, choices: FiguresJob['choices']) => {
  const figures = designFigures(design, solved)
  return {
    ...figures,
    ramps: figures.ramps.map((ramp, i) => ({
      ...ramp,
      runOut: runOutFigures(solved.ramps[i]!, design),
      choices: choices[i]!,
      deckBoard: ramp.deckBoard && counted(ramp.deckBoard),
      skin: ramp.skin.map(counted),
    })),
  }
}

/** The sheet that closes the step at the toe; null where something else does. */
const runOutFigures = (ramp: Ramp, { stock, units }: Design) => {
  const runOut = isCurved(ramp) ? runOutSheet(ramp, stock, units) : null
  if (!runOut) return null
  const { sheet, ...rest } = runOut
  return { sheet: sheet.material, thickness: sheet.thickness, ...rest }
}

const counted = <
  T extends {
    readonly rows: Parameters<typeof screwCounts>[0]
    readonly screws: { readonly count: number; readonly length: number | null }
  },
>(
  layer: T,
) => ({ ...layer, screws: { ...layer.screws, lengths: screwCounts(layer.rows) } })

/** On the design's own paper. */
const pagesOf = (design: Design, solved: WholeDesign): PageFigures => {
  const { counts, cover } = coverSides(distinctLines(curvedOf(solved.ramps)), usualLaying(design.paper))
  return { paper: design.paper, ...counts, takes: cover }
}

const answerRecord = ({ ramp, key, mm, measures, passed, binds }: Answer) => ({
  ramp,
  key,
  mm,
  ...measures,
  passed,
  binds,
})
