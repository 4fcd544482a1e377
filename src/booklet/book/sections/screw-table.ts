import type { OwnSheet } from '../../../ramp/skin/own-sheets.ts'
import type { SheetPart } from '../../../stock/sheet-part.ts'
import { type Block, table } from '../block.ts'
import type { Book } from '../book.ts'

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
export const screwTable = <R extends Row>(
  { show, screw, width }: Book,
  sheets: readonly MarkedSheet<R>[],
  use: 'skin' | 'deck board',
  into: (row: R) => string,
): Block => {
  const several = sheets.length > 1
  const groups = new Map<
    string,
    { readonly marks: string[]; readonly rows: readonly (readonly string[])[] }
  >()
  for (const { mark, up, rows } of sheets) {
    const cells = rows.map((row) => [
      show(row.at),
      into(row),
      row.length === null ? 'none' : screw(use, row.length),
      `${row.across.length}`,
      row.across.map(show).join(', '),
    ])
    const key = `${up.from} ${cells.join(' | ')}`
    const alike = groups.get(key)
    if (alike) alike.marks.push(mark)
    else groups.set(key, { marks: [mark], rows: cells })
  }
  return table(
    {
      columns: [
        { head: '', kind: 'box' },
        ...(several ? [{ head: 'sheet', kind: 'words' as const, face: 'bold' as const }] : []),
        { head: several ? 'row at, from its\nown lower edge' : 'row at', kind: 'figure' },
        { head: 'into', kind: 'words' },
        { head: 'screw', kind: 'words' },
        { head: 'count', kind: 'right' },
        { head: several ? 'from its own left edge' : 'from the left edge', kind: 'words' },
      ],
      rows: [...groups.values()].flatMap(({ marks, rows }) =>
        rows.map((row) => ['', ...(several ? [marks.join(', ')] : []), ...row]),
      ),
    },
    width,
  )
}
