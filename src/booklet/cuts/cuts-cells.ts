import type { SheetPanels } from '../../stock/panel/panels.ts'

/** Every piece as a row of a spreadsheet; mm and degrees. */
export const panelCells = (
  sheets: readonly SheetPanels[],
): readonly (readonly (string | number | null)[])[] => [
  [
    'panel',
    'material',
    'thickness mm',
    'panel width mm',
    'panel length mm',
    'piece',
    'ramp',
    'what',
    'from left mm',
    'from below mm',
    'turned degrees',
    'turned over',
    'along mm',
    'up mm',
  ],
  ...sheets.flatMap(({ panels }) =>
    panels.flatMap(({ number, sheet, size, pieces }) =>
      pieces.flatMap(({ part, under, x, y, turn, over, box }) =>
        [part, ...(under ? [under] : [])].map((own) => [
          number,
          sheet.material,
          sheet.thickness,
          size[0],
          size[1],
          own.mark,
          own.ramp,
          own.words,
          x,
          y,
          turn,
          own === part ? (over ? 'yes' : 'no') : 'yes',
          box.x1 - box.x0,
          box.y1 - box.y0,
        ]),
      ),
    ),
  ),
]
