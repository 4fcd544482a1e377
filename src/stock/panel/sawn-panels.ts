import type { Stock } from '../../design/design.ts'
import {
  isMirrored,
  type LaidPanel,
  type LaidSheet,
  outlineName,
  type Panel,
  type SheetPanels,
} from './panels.ts'
import { sawPanel } from './saw-order.ts'
import { slicesOf } from './slices.ts'

/** Each panel with the order in which it is sawn: whoever asks only what is bought needs none. */
export const sawSheets = (sheets: readonly LaidSheet[], stock: Pick<Stock, 'kerf'>): readonly SheetPanels[] =>
  sheets.map((sheet) => ({
    ...sheet,
    panels: sheet.panels.map((panel) => sawnPanel(panel, stock.kerf, sheet.step)),
  }))

const sawnPanel = (panel: LaidPanel, kerf: number, step: number): Panel => {
  const { pieces, size } = panel
  const sawn = pieces.map((piece) => {
    const { part, box, outline, second } = piece
    const square = second === null
    return {
      mark: part.mark,
      box,
      square,
      ...(square ? {} : { slices: slicesOf(outline, box), outline: outlineName(piece) }),
      mirrored: isMirrored(piece),
    }
  })
  return { ...panel, ...sawPanel(sawn, { x0: 0, y0: 0, x1: size[1], y1: size[0] }, kerf, step) }
}
