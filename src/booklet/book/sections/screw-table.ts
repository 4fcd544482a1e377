import type { OwnSheet } from '../../../ramp/skin/own-sheets.ts'
import type { SheetPart } from '../../../stock/sheet-part.ts'
import { type Block, beside, gap, stack, type TableBlock, table, words } from '../block.ts'
import type { Book } from '../book.ts'
import type { Figure } from '../figure.ts'

interface Row {
  readonly at: number
  readonly across: readonly number[]
  /** mm; null where no usual screw is short enough */
  readonly length: number | null
}

/** A sheet with its mark on panel and list. */
export interface MarkedSheet<R> extends OwnSheet<R> {
  readonly mark: string
}

/** Sheets with the marks of those parts of a ramp that are meant, in the order of both. */
export const marked = <R>(
  { sheets }: Book,
  own: readonly OwnSheet<R>[],
  isMeant: (part: SheetPart) => boolean,
): readonly MarkedSheet<R>[] => {
  const marks = sheets.flatMap(({ parts }) => parts.filter(isMeant)).map(({ mark }) => mark)
  return own.map((sheet, i) => ({ ...sheet, mark: marks[i] ?? '' }))
}

/** Rows of screws sheet by sheet, each from the edges of its own sheet; sheets side by side that are screwed alike together. */
const screwRows = <R extends Row>({ show }: Book, sheets: readonly MarkedSheet<R>[]) => {
  const groups = new Map<string, { readonly marks: string[]; readonly rows: readonly R[] }>()
  for (const { mark, up, rows } of sheets) {
    const key = JSON.stringify([
      up.from,
      rows.map(({ at, across, length }) => [show(at), across.map(show), length]),
    ])
    const alike = groups.get(key)
    if (alike) alike.marks.push(mark)
    else groups.set(key, { marks: [mark], rows })
  }
  return [...groups.values()].flatMap(({ marks, rows }) =>
    rows.map((row) => ({ mark: marks.join(', '), row })),
  )
}

export interface ScrewTable<R extends Row> {
  readonly sheets: readonly MarkedSheet<R>[]
  /** sheets and screws, in words */
  readonly takes: string
  readonly use: 'skin' | 'deck board'
  readonly into: (row: R) => string
}

const tableOf = <R extends Row>(
  book: Book,
  { sheets, use, into }: ScrewTable<R>,
  width: number,
  narrow: boolean,
): TableBlock => {
  const { show, screw } = book
  const several = sheets.length > 1
  const own = several ? ', from its\nown lower edge' : ''
  // where there is one size alone the words over the table tell it
  const sized = !narrow || new Set(sheets.flatMap(({ rows }) => rows.map(({ length }) => length))).size > 1
  return table(
    {
      columns: [
        { head: '', kind: 'box' },
        ...(several ? [{ head: 'sheet', kind: 'words' as const, face: 'bold' as const }] : []),
        { head: `row at${narrow ? '' : own}`, kind: 'figure' },
        { head: 'into', kind: 'words' },
        ...(sized ? [{ head: 'screw', kind: 'words' as const }] : []),
        { head: 'count', kind: 'right' },
        ...(narrow
          ? []
          : [{ head: several ? 'from its own left edge' : 'from the left edge', kind: 'words' as const }]),
      ],
      rows: screwRows(book, sheets).map(({ mark, row }) => [
        '',
        ...(several ? [mark] : []),
        show(row.at),
        into(row),
        ...(sized ? [row.length === null ? 'none' : screw(use, row.length)] : []),
        `${row.across.length}`,
        ...(narrow ? [] : [row.across.map(show).join(', ')]),
      ]),
    },
    width,
  )
}

/** Of the page's width for a drawing with its table beside it, and the air between, mm. */
const share = 0.58
const between = 3
/** A drawing with more rows of figures than this needs the whole width. */
const mostRows = 12
/** Smaller than this its crosses run into each other, mm on paper for one of the thing: it then takes the whole width, if it stands there larger by so much. */
const small = { ratio: 1 / 50, gain: 1.4 } as const
/** Steps beside a drawing may reach so far below it, mm. */
const below = 20

/** A drawing of sheets, the table of their screws and the steps: beside each other where all rows are alike across and the drawing is not too small so, one under the other else. */
export const sheetWithScrews = <R extends Row>(
  book: Book,
  facts: ScrewTable<R>,
  at: (width: number) => Figure,
  steps: (width: number) => readonly Block[],
): readonly Block[] => {
  const { width, show } = book
  const [first, ...others] = new Set(
    facts.sheets.flatMap(({ rows }) => rows.map(({ across }) => across.map(show).join(', '))),
  )
  const room = width * (1 - share) - between
  const narrow = tableOf(book, facts, room, true)
  const under = (drawing: Figure, alike: boolean): readonly Block[] => [
    drawing,
    words(facts.takes, width),
    ...steps(width),
    tableOf(book, facts, width, alike),
  ]
  if (
    first === undefined ||
    others.length > 0 ||
    narrow.laid.width > room ||
    narrow.laid.rows.length > mostRows
  )
    return under(at(width), false)
  const drawing = at(width * share)
  if (drawing.ratio < small.ratio) {
    const wide = at(width)
    if (wide.ratio > small.gain * drawing.ratio) return under(wide, true)
  }
  const aside = [words(facts.takes, room), narrow]
  const all = stack([...aside, gap(2), ...steps(room)])
  return all.height <= drawing.height + below
    ? [beside(drawing, all, width * share + between)]
    : [beside(drawing, stack(aside), width * share + between), ...steps(width)]
}
