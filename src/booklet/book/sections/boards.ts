import type { SawnBoard } from '../../../stock/timber/boards.ts'
import { boardHeight, boardView } from '../../views/board-view.ts'
import { type Block, check, drawn, gap, part, stack, words } from '../block.ts'
import type { Book } from '../book.ts'

/** Between two boards, mm. */
const between = 2.5

/** Every length of timber drawn with what is cut from it; those that are cut alike are drawn once. */
export const boardBlocks = (book: Book): readonly Block[] => {
  const { width, stock } = book
  if (stock.timber.length === 0) return []
  const all = stock.timber.flatMap(({ boards }) => boards)
  const ratio = width / Math.max(...all.map(({ length }) => length))
  return [
    part('Timber by board', width),
    words(
      'Square one end, then cut the pieces in this order, the blade beyond each mark. Write its mark on each piece.',
      width,
    ),
    ...alike(all).map((boards) =>
      stack([
        check(boardsWords(boards, book), width),
        drawn(boardView({ ...boards[0]!, cuts: cutsOf(boards, book) }, ratio), boardHeight),
        gap(between),
      ]),
    ),
  ]
}

/** `5 boards 38 × 89, 2400 long: T1 T2; T3 T4; left 35` */
const boardsWords = (boards: readonly SawnBoard[], { show, fine }: Book): string => {
  const [{ section, length, left }] = boards as readonly [SawnBoard]
  const marks = boards.map(({ cuts }) =>
    cuts
      .map(({ mark, ripped }) => `${mark}${ripped ? ` ripped to ${ripped.map(fine).join(' × ')}` : ''}`)
      .join(' '),
  )
  return `${boards.length === 1 ? '1 board' : `${boards.length} boards, each`} ${section.map(fine).join(' × ')}, ${show(length)} long: ${marks.join('; ')}; ${show(left)} left.`
}

/** From the squared end. Boards that are cut alike have no marks in common. */
const cutsOf = (boards: readonly SawnBoard[], { design, show }: Book) => {
  let from = 0
  return boards[0]!.cuts.map(({ length, mark }) => {
    const cut = {
      from,
      length,
      names: boards.length > 1 ? [show(length)] : [`${mark}  ${show(length)}`, mark],
    }
    from += length + design.stock.kerf
    return cut
  })
}

const alike = (boards: readonly SawnBoard[]): readonly (readonly SawnBoard[])[] => {
  const groups = new Map<string, SawnBoard[]>()
  for (const board of boards) {
    const key = JSON.stringify([
      board.section,
      board.length,
      board.cuts.map(({ length, ripped }) => [length, ripped]),
    ])
    groups.set(key, [...(groups.get(key) ?? []), board])
  }
  return [...groups.values()]
}
