import type { SheetPanels } from '../../stock/panel/panels.ts'
import type { NumberedBoard } from './timber-words.ts'

/**
 * Every piece as a row of a spreadsheet; mm and degrees. Timbers are rows of the same columns: thickness and depth of the
 * section, the board's length, and the place from its squared end.
 */
export const cutsCells = (
  sheets: readonly SheetPanels[],
  boards: readonly NumberedBoard[],
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
  ...boards.flatMap(({ number, board, cuts }) =>
    cuts.map(({ part, from, length }) => [
      `board ${number}`,
      'timber',
      board.section[0],
      board.section[1],
      board.length,
      part.mark,
      part.ramp,
      part.ripped ? `${part.words}, ripped to ${part.ripped.join(' x ')}` : part.words,
      from,
      0,
      0,
      'no',
      length,
      board.section[1],
    ]),
  ),
]
