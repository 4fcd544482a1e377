import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import type { SheetPanels } from '../../stock/panel/panels.ts'
import type { NumberedBoard } from './timber-words.ts'

/** In steps that a tape has, 0.5 mm. */
const halves = (mm: number): number => Math.round(mm * 2) / 2 + 0

/** `58 29/32`, `0 3/16`: a fraction alone a spreadsheet takes for a day. */
const thirtySeconds = (mm: number): string => {
  const all = Math.round((mm / inch) * 32)
  let [top, bottom] = [all % 32, 32]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  return `${Math.floor(all / 32)}${top === 0 ? '' : ` ${top}/${bottom}`}`
}

/**
 * Every piece as a row of a spreadsheet, lengths as a tape reads them; degrees. Timbers are rows of the same columns: thickness and depth of the
 * section, the board's length, and the place from its squared end.
 */
export const cutsCells = (
  sheets: readonly SheetPanels[],
  boards: readonly NumberedBoard[],
  units: Units,
): readonly (readonly (string | number | null)[])[] => {
  const tape = (mm: number): number | string => (units === 'mm' ? halves(mm) : thirtySeconds(mm))
  // sizes as they are sold are no lengths to measure
  const sold = (mm: number): number | string => (units === 'mm' ? mm : thirtySeconds(mm))
  return [
    [
      'panel',
      'material',
      `thickness ${units}`,
      `panel width ${units}`,
      `panel length ${units}`,
      'piece',
      'ramp',
      'what',
      `from left ${units}`,
      `from below ${units}`,
      'turned degrees',
      'turned over',
      `along ${units}`,
      `up ${units}`,
    ],
    ...sheets.flatMap(({ panels }) =>
      panels.flatMap(({ number, sheet, size, pieces }) =>
        pieces.flatMap(({ part, under, x, y, turn, over, box }) =>
          [part, ...(under ? [under] : [])].map((own) => [
            number,
            sheet.material,
            sold(sheet.thickness),
            sold(size[0]),
            sold(size[1]),
            own.mark,
            own.ramp,
            own.words,
            tape(x),
            tape(y),
            Math.round(turn * 10) / 10,
            own === part ? (over ? 'yes' : 'no') : 'yes',
            tape(box.x1 - box.x0),
            tape(box.y1 - box.y0),
          ]),
        ),
      ),
    ),
    ...boards.flatMap(({ number, board, cuts }) =>
      cuts.map(({ part, from, length }) => [
        `board ${number}`,
        'timber',
        sold(board.section[0]),
        sold(board.section[1]),
        sold(board.length),
        part.mark,
        part.ramp,
        part.ripped ? `${part.words}, ripped to ${part.ripped.map(tape).join(' x ')}` : part.words,
        tape(from),
        tape(0),
        0,
        'no',
        tape(length),
        sold(board.section[1]),
      ]),
    ),
  ]
}
