import { listPages } from '../booklet/list/list-page.ts'
import type { ListFacts } from '../booklet/list/list-text.ts'
import type { Design } from '../design/design.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { boughtPanels } from '../stock/list/bought-panels.ts'
import { sheetsOf } from '../stock/panel/sheets.ts'
import { partsOf } from '../stock/parts.ts'
import { takeStock } from '../stock/stock.ts'
import { listFigures } from '../stock/stock-figures.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import type { Laying } from './laying.ts'
import type { Refusal } from './refusal.ts'

export interface BuyJob {
  readonly solved: WholeDesign
  readonly facts: ListFacts
}

/** Everything to buy for a design, with its cost where it has prices. */
export const buyJob = (design: Design): BuyJob | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  if ('faults' in laid) return { refused: 'stock', faults: laid.faults }
  const stock = takeStock(design, solved, parts, boughtPanels(laid.sheets, design.units))
  return {
    solved,
    facts: {
      title: design.title,
      units: design.units,
      prices: design.prices ?? null,
      stock: { ...stock, list: stock.list! },
    },
  }
}

/** As scripts read it. */
export const buyRecord = (design: Design, { facts }: BuyJob) => ({
  title: design.title,
  units: design.units,
  ...listFigures(facts.stock, design),
})

/** The list with boxes to tick. */
export const buyInput = (
  design: Design,
  { facts }: BuyJob,
  { paper, ...sheet }: Laying['sheet'],
): PdfInput => ({
  title: design.title,
  subject: 'What to buy',
  pages: listPages(sheetWindow({ paper, ...sheet }), facts).map((drawing, i) => ({
    width: paper.width,
    height: paper.height,
    draw: () => drawing,
    label: i === 0 ? 'list' : `list ${i + 1}`,
    bookmark: i === 0 ? 'What to buy' : `What to buy, page ${i + 1}`,
  })),
  attachments: [],
})
