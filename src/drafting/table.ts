import { type Drawing, type Face, stroke, text } from '../drawing/drawing.ts'
import { wrapWords } from '../drawing/paragraph.ts'
import { textWidth } from '../drawing/text-width.ts'
import { pathOf, rectangle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { figureParts } from '../length/figure-parts.ts'
import type { DraftStyle } from './line-types.ts'

export interface Column {
  readonly head: string
  /** `figure` sets the points and fractions of a column under each other; `box` is a square to tick, `blank` a line to write on */
  readonly kind: 'words' | 'right' | 'figure' | 'box' | 'blank'
  readonly face?: Face
}

export interface Table {
  readonly columns: readonly Column[]
  /** a cell for each column; words in a box or a blank stand in its place: nothing is ticked or written there */
  readonly rows: readonly (readonly string[])[]
  /** rows close to each other, without lines between them */
  readonly dense?: boolean
}

/** A table with its places found: widths from what stands in it. */
export interface LaidTable {
  readonly table: Table
  readonly style: DraftStyle
  readonly width: number
  /** left edges of the columns */
  readonly lefts: readonly number[]
  readonly widths: readonly number[]
  /** of a figure column: from its left edge to the seam */
  readonly seams: readonly number[]
  readonly head: { readonly lines: readonly (readonly string[])[]; readonly height: number }
  readonly rows: readonly { readonly lines: readonly (readonly string[])[]; readonly height: number }[]
}

/** Between columns, and under the line of a head, shares of the letters' height. */
const airOf = ({ dense }: Table): number => (dense ? 1.4 : 2.2)
const underHead = ({ dense }: Table): number => (dense ? 0.4 : 0)
const leading = 1.5
/** Over and under a row, shares of its letters' height. */
const padOf = ({ dense }: Table): number => (dense ? 0.2 : 0.55)
const blankWidth = 9
const slack = 1e-6

/** Column widths from the text; where that is more than `width` mm, the widest column of words is wrapped. */
export const layTable = (table: Table, width: number, style: DraftStyle): LaidTable => {
  const { size } = style
  const { columns } = table
  const cells = (i: number): readonly string[] => table.rows.map((row) => row[i] ?? '')
  const seams = columns.map(({ kind, face }, i) =>
    kind === 'figure'
      ? widest(
          cells(i).map((cell) => figureParts(cell)[0]),
          size,
          face,
        )
      : 0,
  )
  const natural = columns.map(({ head, kind, face }, i) => {
    const headed = widest(head.split('\n'), size, 'bold')
    const own =
      kind === 'box'
        ? size
        : kind === 'blank'
          ? blankWidth * size
          : kind === 'figure'
            ? seams[i]! +
              widest(
                cells(i).map((cell) => restWords(figureParts(cell)[1])),
                size,
                face,
              )
            : widest(cells(i), size, face)
    return Math.max(headed, own)
  })
  const widths = squeezed(natural, columns, width - airOf(table) * size * (columns.length - 1), size)
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, w) => sum + w + airOf(table) * size, 0))
  const heightOf = (lines: readonly (readonly string[])[]): number =>
    (Math.max(1, ...lines.map((cell) => cell.length)) - 1) * leading * size + size * (1 + 2 * padOf(table))
  const laid = (texts: readonly string[], face: (i: number) => Face) => {
    const lines = texts.map((words, i) => cellLines(words, columns[i]!, widths[i]!, size, face(i)))
    return { lines, height: heightOf(lines) }
  }
  const head = laid(
    columns.map(({ head: words }) => words),
    () => 'bold',
  )
  return {
    table,
    style,
    width: lefts.at(-1)! + widths.at(-1)!,
    lefts,
    widths,
    seams: seams.map(
      (seam, i) =>
        seam +
        (columns[i]!.kind === 'figure' ? figureShift(cells(i), widths[i]!, seam, size, columns[i]!.face) : 0),
    ),
    head: { ...head, height: head.height + underHead(table) * size },
    rows: table.rows.map((row) => laid(row, (i) => columns[i]!.face ?? 'regular')),
  }
}

/** Figures narrower than their head stand under its right end. */
const figureShift = (
  cells: readonly string[],
  width: number,
  seam: number,
  size: number,
  face?: Face,
): number =>
  width -
  seam -
  widest(
    cells.map((cell) => restWords(figureParts(cell)[1])),
    size,
    face,
  )

const widest = (words: readonly string[], size: number, face: Face = 'regular'): number =>
  Math.max(0, ...words.map((word) => textWidth(word, size, face)))

/** A fraction stands off its inches, a decimal and a sign do not. */
const restWords = (rest: string): string => (/^\d/.test(rest) ? ` ${rest}` : rest)

/** Column widths within a room: the widest column of words gives what the others do not need. */
const squeezed = (
  natural: readonly number[],
  columns: readonly Column[],
  room: number,
  size: number,
): readonly number[] => {
  const widths = [...natural]
  const least = 8 * size
  for (let over = sum(widths) - room; over > slack; over = sum(widths) - room) {
    const wordy = columns.flatMap(({ kind }, i) =>
      kind === 'words' && widths[i]! > least + slack ? [i] : [],
    )
    if (wordy.length === 0) break
    const i = wordy.reduce((most, k) => (widths[k]! > widths[most]! ? k : most))
    // down to the next widest, so that two long columns share
    const next = Math.max(least, ...wordy.filter((k) => k !== i).map((k) => widths[k]!))
    const give = next < widths[i]! - slack ? widths[i]! - next : over / wordy.length
    widths[i] = Math.max(least, widths[i]! - Math.min(over, give))
  }
  return widths
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, n) => all + n, 0)

const cellLines = (
  words: string,
  { kind }: Column,
  width: number,
  size: number,
  face: Face,
): readonly string[] =>
  kind === 'figure' || kind === 'right'
    ? words.split('\n')
    : words.split('\n').flatMap((line) => wrapWords(line, width + slack, size, face))

/** How many rows from the one numbered `from` fit under their head in a height, mm. */
export const tableFits = ({ head, rows }: LaidTable, from: number, height: number): number => {
  let left = height - head.height
  let count = 0
  while (from + count < rows.length && rows[from + count]!.height <= left + slack)
    left -= rows[from + count++]!.height
  return count
}

export const tableHeight = ({ head, rows }: LaidTable, from = 0, count = rows.length): number =>
  head.height + rows.slice(from, from + count).reduce((all, row) => all + row.height, 0)

/** The head and some of the rows, a hair line under each; the first capitals hang from `topLeft`. */
export const tableMarks = (laid: LaidTable, topLeft: Point, from = 0, count = laid.rows.length): Drawing => {
  const { style, table, head, rows, width } = laid
  const { layer, lines } = style
  let top = topLeft.y
  const row = (cells: LaidTable['head'], isHead: boolean): Drawing => {
    const marks = table.columns.flatMap((column, i) =>
      cellMarks(laid, column, i, cells.lines[i] ?? [], topLeft.x, top, isHead),
    )
    top -= cells.height
    if (table.dense && !isHead) return marks
    const line = top + (isHead ? underHead(table) * style.size : 0)
    const pen = isHead ? { width: lines.thin.width * 1.4 } : { width: lines.thin.width / 2, grey: 0.4 }
    return [
      ...marks,
      stroke(layer, pathOf({ x: topLeft.x, y: line }, { x: topLeft.x + width, y: line }), pen),
    ]
  }
  return [...row(head, true), ...rows.slice(from, from + count).flatMap((cells) => row(cells, false))]
}

const cellMarks = (
  { table, lefts, widths, seams, style }: LaidTable,
  { kind, face = 'regular' }: Column,
  i: number,
  lines: readonly string[],
  x: number,
  top: number,
  isHead: boolean,
): Drawing => {
  const { layer, size } = style
  const left = x + lefts[i]!
  const right = left + widths[i]!
  const base = (k: number): number => top - size * (1 + padOf(table)) - k * leading * size
  const set = isHead ? 'bold' : face
  if (!isHead && kind === 'box' && lines.join('') === '')
    return [stroke(layer, rectangle(left, base(0), left + size, base(0) + size), style.lines.thin)]
  if (!isHead && kind === 'blank' && lines.join('') === '')
    return [
      stroke(layer, pathOf({ x: left, y: base(0) }, { x: right, y: base(0) }), {
        width: style.lines.thin.width,
        dash: [0.3, 0.7],
      }),
    ]
  return lines.flatMap((line, k): Drawing => {
    if (line === '') return []
    const y = base(k)
    if (kind === 'figure' && !isHead) {
      const [whole, rest] = figureParts(line)
      const seam = left + seams[i]!
      return [
        ...(whole === '' ? [] : [text(layer, { x: seam, y }, size, whole, { face: set, align: 'right' })]),
        ...(rest === ''
          ? []
          : [
              text(layer, { x: seam + (/^\d/.test(rest) ? textWidth(' ', size, set) : 0), y }, size, rest, {
                face: set,
              }),
            ]),
      ]
    }
    return kind === 'right' || kind === 'figure'
      ? [text(layer, { x: right, y }, size, line, { face: set, align: 'right' })]
      : [text(layer, { x: left, y }, size, line, { face: set })]
  })
}
