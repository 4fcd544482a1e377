import { numberList } from '../../../length/word-list.ts'
import type { SawnBoard } from '../../../stock/timber/boards.ts'
import { timberPartsOf } from '../../../stock/timber-parts.ts'
import { partWords } from '../../cuts/timber-words.ts'
import { boardHeight, boardView } from '../../views/board-view.ts'
import { type Block, check, drawn, gap, named, part, stack, words } from '../block.ts'
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
    named('boards', part('Timber by board', width)),
    {
      ...words(
        'Square one end, then cut the pieces in this order, the blade beyond each mark. Write its mark on each piece.',
        width,
      ),
      withNext: true,
    },
    ...alike(all).map((boards) =>
      stack([
        check(boardsWords(boards, all, book), width),
        drawn(boardView({ ...boards[0]!, cuts: cutsOf(boards, book) }, ratio), boardHeight),
        gap(between),
      ]),
    ),
  ]
}

/** `Boards 1 to 5, each 38 × 89, 2400 long. T1 stud 1, T2 stud 2; T3 stud 3, T4 stud 4; 35 left of each.` */
const boardsWords = (boards: readonly SawnBoard[], all: readonly SawnBoard[], book: Book): string => {
  const { solved, several, units, show, fine } = book
  const [{ section, length, left }] = boards as readonly [SawnBoard]
  const parts = timberPartsOf(solved.ramps)
  const marks = boards.map(({ cuts }) =>
    cuts
      .map(({ mark }) => `${mark} ${partWords(parts.find((part) => part.mark === mark)!, several, units)}`)
      .join(', '),
  )
  const numbers = numberList(
    'Board',
    boards.map((board) => all.indexOf(board) + 1),
  )
  return `${numbers}${boards.length > 1 ? ', each' : ':'} ${section.map(fine).join(' × ')}, ${show(length)} long. ${marks.join('; ')}; ${show(left)} left${boards.length > 1 ? ' of each' : ''}.`
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
