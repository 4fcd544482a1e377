import type { SawnBoard } from '../../../stock/timber/boards.ts'
import { type Block, part, table, words } from '../block.ts'
import type { Book } from '../book.ts'

/** Every length of timber with what is cut from it; those that are cut alike stand in one row. */
export const boardBlocks = (book: Book): readonly Block[] => {
  const { width, stock, show, fine } = book
  if (stock.timber.length === 0) return []
  return [
    part('Timber by board', width),
    words(
      'Square one end, then cut the pieces in this order, the blade beyond each mark. Write its mark on each piece.',
      width,
    ),
    ...stock.timber.flatMap(({ section, boards }) => [
      table(
        {
          columns: [
            { head: '', kind: 'box' },
            { head: 'boards', kind: 'right', face: 'bold' },
            { head: section.map(fine).join(' × '), kind: 'right' },
            { head: 'cut', kind: 'words' },
            { head: 'marks', kind: 'words' },
            { head: 'left', kind: 'figure' },
          ],
          rows: alike(boards).map((own) => [
            '',
            `${own.length}`,
            show(own[0]!.length),
            lengthsOf(own[0]!, show, fine),
            own.map(({ cuts }) => cuts.map(({ mark }) => mark).join(' ')).join('; '),
            show(own[0]!.left),
          ]),
        },
        width,
      ),
    ]),
  ]
}

/** `4 of 1180`, with what is ripped. */
const lengthsOf = (
  { cuts }: SawnBoard,
  show: (mm: number) => string,
  fine: (mm: number) => string,
): string => {
  const said = cuts.map(
    ({ length, ripped }) => `${show(length)}${ripped ? ` ripped to ${ripped.map(fine).join(' × ')}` : ''}`,
  )
  return [...new Set(said)].map((one) => `${said.filter((own) => own === one).length} of ${one}`).join(', ')
}

const alike = (boards: readonly SawnBoard[]): readonly (readonly SawnBoard[])[] => {
  const groups = new Map<string, SawnBoard[]>()
  for (const board of boards) {
    const key = JSON.stringify([board.length, board.cuts.map(({ length, ripped }) => [length, ripped])])
    groups.set(key, [...(groups.get(key) ?? []), board])
  }
  return [...groups.values()]
}
