import { listPages } from '../booklet/list/list-page.ts'
import type { ListFacts } from '../booklet/list/list-text.ts'
import type { Design } from '../design/design.ts'
import { sheetWindow } from '../page/sheet/sheet.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { listFigures } from '../stock/stock-figures.ts'
import type { PdfInput } from '../write/pdf-input.ts'
import type { Laying } from './laying.ts'
import { isRefusal, type Refusal } from './refusal.ts'
import { laidDesign, stockOf } from './supplied.ts'

export interface BuyJob {
  readonly solved: WholeDesign
  readonly facts: ListFacts
}

/** Everything to buy for a design, with its cost where it has prices. */
export const buyJob = (design: Design): BuyJob | Refusal => {
  const laid = laidDesign(design)
  if (isRefusal(laid)) return laid
  return {
    solved: laid.solved,
    facts: {
      title: design.title,
      units: design.units,
      prices: design.prices ?? null,
      stock: stockOf(design, laid),
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
