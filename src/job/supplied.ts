import type { Design } from '../design/design.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { boughtPanels } from '../stock/list/bought-panels.ts'
import type { SheetPanels } from '../stock/panel/panels.ts'
import { sawSheets } from '../stock/panel/sawn-panels.ts'
import { sheetsOf } from '../stock/panel/sheets.ts'
import { type Parts, partsOf } from '../stock/parts.ts'
import { type Supplies, suppliesOf, takeStock } from '../stock/stock.ts'
import type { Refusal } from './refusal.ts'

export interface Laid {
  readonly solved: WholeDesign
  readonly parts: Parts
  readonly sheets: readonly SheetPanels[]
}

/** A design whose every sheet part lies on a panel of the stock. */
export const laidDesign = (design: Design): Laid | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  return 'faults' in laid
    ? { refused: 'stock', faults: laid.faults }
    : { solved, parts, sheets: sawSheets(laid.sheets, design.stock) }
}

/** What is sawn, bought and moved of it. */
export const stockOf = (
  design: Design,
  { solved, parts, sheets }: Laid,
): Supplies & { readonly list: NonNullable<Supplies['list']> } => {
  const supplies = suppliesOf(
    design,
    solved,
    takeStock(design, solved, parts),
    boughtPanels(sheets, design.units),
  )
  // its panels are known
  return { ...supplies, list: supplies.list! }
}
