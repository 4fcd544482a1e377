import { curvedOf } from '../../../design/kind-traits.ts'
import { numberList, wordList } from '../../../length/word-list.ts'
import type { TimberPart } from '../../../stock/timber-parts.ts'
import { pieceCells } from '../../cuts/piece-words.ts'
import { beside, type FixedBlock, part, stack, table } from '../block.ts'
import type { Book } from '../book.ts'

type Row = readonly [mark: string, what: string, size: string, from: string]

/** Between two halves of the table, mm. */
const between = 6

/** All that is sawn in one table: marks, what each is, how large, from what. Side by side in two halves where they have room. */
export const pieces = (book: Book): FixedBlock => {
  const { width } = book
  const rows = [...sheetRows(book), ...timberRows(book), ...pipeRows(book)]
  const half = (width - between) / 2
  const middle = Math.ceil(rows.length / 2)
  const [left, right] = [rows.slice(0, middle), rows.slice(middle)].map((own) => tableOf(own, half))
  const narrow = [left, right].every((own) => own!.laid.width <= half + 1e-6)
  return stack([
    part('All pieces', width),
    narrow && rows.length > 1
      ? beside(stack([left!]), stack([right!]), half + between)
      : tableOf(rows, width),
  ])
}

const tableOf = (rows: readonly Row[], width: number) =>
  table(
    {
      columns: [
        { head: 'piece', kind: 'words', face: 'bold' },
        { head: 'what', kind: 'words' },
        { head: 'size', kind: 'right' },
        { head: 'from', kind: 'words' },
      ],
      rows,
    },
    width,
  )

/** By their marks: sides first, as they are numbered. */
const sheetRows = ({ sheets, several, units }: Book): readonly Row[] => {
  const marks = sheets.flatMap(({ parts }) => parts.map(({ mark }) => mark))
  const letters = [...new Set(marks.map((mark) => mark[0]!))]
  const rank = ([mark]: Row): number => 1000 * letters.indexOf(mark[0]!) + Number.parseInt(mark.slice(1), 10)
  return sheets
    .flatMap(({ panels }) => panels)
    .flatMap(({ number, pieces: laid }) =>
      laid.map((piece): Row => {
        const [mark, , extent] = pieceCells(piece, several, units)
        const { ramp, words } = piece.part
        // which one of several its mark tells
        const what = words.split(',', 1)[0]!
        return [mark, several ? `${ramp}, ${what}` : what, extent, `panel ${number}`]
      }),
    )
    .sort((a, b) => rank(a) - rank(b))
}

/** Those of one ramp that are sawn alike in one row. */
const timberRows = ({ timbers, several, show }: Book): readonly Row[] => {
  const alike = new Map<string, TimberPart[]>()
  for (const one of timbers) {
    const key = JSON.stringify([one.ramp, show(one.length), one.ripped, one.place?.under])
    alike.set(key, [...(alike.get(key) ?? []), one])
  }
  return [...alike.values()].map((all): Row => {
    const { ramp, length, ripped, place } = all[0]!
    const numbers = numberList(
      'timber',
      all.map(({ mark }) => Number(mark.slice(1))),
    )
    const what = `${several ? `${ramp}, ` : ''}${all.length} ${place ? 'block' : 'timber'}${all.length > 1 ? 's' : ''}${place ? `, ${place.under}` : ''}${ripped ? ', ripped' : ''}`
    return [numbers.replace(/^timbers? /, '').replace(/\d+/g, 'T$&'), what, `${show(length)} long`, 'boards']
  })
}

const pipeRows = ({ solved: { ramps }, several, show, fine }: Book): readonly Row[] =>
  curvedOf(ramps).flatMap(({ name, coping, pipe }): readonly Row[] => {
    if (!coping || !pipe) return []
    const long = wordList(pipe.pieces.map(({ length }) => show(length)))
    return [['', `${several ? `${name}, ` : ''}pipe`, `${fine(coping.outside)}, ${long} long`, '']]
  })
