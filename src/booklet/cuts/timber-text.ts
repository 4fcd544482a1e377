import type { Units } from '../../design/design.ts'
import { wrapLine } from '../../length/words.ts'
import { showLength } from '../../length.ts'
import { boardWords, type NumberedBoard, partWords, timberNote } from './timber-words.ts'

/** What is sawn from which timber, as plain text in lines of so many letters. */
export const timberText = (
  boards: readonly NumberedBoard[],
  several: boolean,
  units: Units,
  columns: number,
): string => {
  if (boards.length === 0) return ''
  const show = (mm: number): string => showLength(mm, units)
  return [
    '',
    ...wrapLine(`Timber. ${timberNote(units)}`, columns, 0),
    '',
    ...boards.flatMap(({ number, board, cuts }) =>
      wrapLine(
        `board ${number} of ${boards.length}: ${boardWords(board, units)}: ` +
          cuts
            .map(({ part, length }) => `${part.mark} ${show(length)} (${partWords(part, several, units)})`)
            .join(', ') +
          (board.left >= 1 ? `; rest ${show(board.left)}` : ''),
        columns,
        4,
      ),
    ),
    '',
  ].join('\n')
}
