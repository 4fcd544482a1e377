import { type Table, tableHeight } from '../../../../drafting/table.ts'
import { inch } from '../../../../geometry/inch.ts'
import { countWords } from '../../../../length/count-words.ts'
import { same } from '../../../../ramp/check/offer.ts'
import type { SawnBoard } from '../../../../stock/timber/boards.ts'
import { boardHeight, boardView } from '../../../cuts/board-view.ts'
import { partWords } from '../../../cuts/timber-words.ts'
import { type Block, beside, caution, drawn, gap, named, part, stack, table, words } from '../../block.ts'
import type { Book } from '../../book.ts'

/** Hands stay so far from a turning blade; common practice, no source. mm */
const heldPiece = { mm: 150, in: 6 * inch } as const

/** Between two boards, mm. */
const between = 2.5

/** Every length of timber drawn with what is cut from it; those that are cut alike are drawn once. */
export const boardBlocks = (book: Book): readonly Block[] => {
  const { width, stock, units, show } = book
  if (stock.timber.length === 0) return []
  const all = stock.timber.flatMap(({ boards }) => boards)
  const ratio = width / Math.max(...all.map(({ length }) => length))
  return [
    named('boards', part('Timber by board', width)),
    ...(all.some(({ cuts }) => cuts.some(({ length }) => length < heldPiece[units] - same))
      ? [
          {
            ...caution(
              `Pieces shorter than ${show(heldPiece[units])}: hold none by hand at a turning blade. Clamp the board and saw them by hand, or in a saw with a clamp of its own.`,
              width,
            ),
            withNext: true,
          },
        ]
      : []),
    {
      ...words(
        'Square one end, then cut the pieces in this order, the blade beyond each mark. Write its mark on each piece.',
        width,
      ),
      withNext: true,
    },
    ...alike(all).flatMap((boards) => groupBlocks(boards, all, ratio, book)),
  ]
}

/** Of more than a page holds the table goes on on the next. */
const groupBlocks = (
  boards: readonly SawnBoard[],
  all: readonly SawnBoard[],
  ratio: number,
  book: Book,
): readonly Block[] => {
  const above = [
    words(boardsWords(boards, book), book.width),
    drawn(boardView({ ...boards[0]!, cuts: cutsOf(boards, book) }, ratio), boardHeight),
    gap(between),
  ]
  const one = stack([...above, ...piecesTables(boards, all, book), gap(between)])
  return one.height <= book.tall
    ? [one]
    : [
        ...above.map((block) => ({ ...block, withNext: true })),
        table(piecesTable(boards, all, book), book.width),
        gap(between),
      ]
}

/** `5 boards 38 × 89, 2400 long; 35 left of each.` */
const boardsWords = (boards: readonly SawnBoard[], { show, fine }: Book): string => {
  const [{ section, length, left }] = boards as readonly [SawnBoard]
  return `${countWords(boards.length, 'board')} ${section.map(fine).join(' × ')}, ${show(length)} long; ${show(left)} left${boards.length > 1 ? ' of each' : ''}.`
}

/** So many rows stand under each other where two columns have no room. */
const fewRows = 4
const betweenColumns = 6
/** Two columns are worth it where they take no more of one's height. */
const saving = 0.9

/** One table, or its halves side by side. */
const piecesTables = (
  boards: readonly SawnBoard[],
  all: readonly SawnBoard[],
  book: Book,
): readonly Block[] => {
  const half = (book.width - betweenColumns) / 2
  const middle = Math.ceil(boards.length / 2)
  const halves = [boards.slice(0, middle), boards.slice(middle)].map((some) =>
    table(piecesTable(some, all, book), half),
  )
  const whole = table(piecesTable(boards, all, book), book.width)
  const fits = halves.every(
    ({ laid }) => laid.width <= half + 1e-6 && tableHeight(laid) < saving * tableHeight(whole.laid),
  )
  return boards.length > fewRows && fits
    ? [beside(stack([halves[0]!]), stack([halves[1]!]), half + betweenColumns)]
    : [whole]
}

/** What is cut from each of them, in the order of its cuts. */
const piecesTable = (
  boards: readonly SawnBoard[],
  all: readonly SawnBoard[],
  { timbers: parts, several, units, show }: Book,
): Table => {
  return {
    columns: [
      { head: '', kind: 'box' },
      { head: 'board', kind: 'right', face: 'bold' },
      { head: 'its pieces, from the squared end', kind: 'words' },
    ],
    rows: boards.map((board) => [
      '',
      `${all.indexOf(board) + 1}`,
      board.cuts
        .map(({ mark, length }) => {
          const part = parts.find((one) => one.mark === mark)!
          // too short for a word in the drawing
          const long = part.part === 'block' ? ` (${show(length)})` : ''
          return `${mark} ${partWords(part, several, units)}${long}`
        })
        .join(', '),
    ]),
  }
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
