import { figureParts } from '../../length/figure-parts.ts'
import { textColumns, wrapLine } from '../../length/words.ts'
import type { Units } from '../../length.ts'
import type { Offsets } from '../../ramp/offsets.ts'
import { type OffsetRow, offsetRows } from './offsets-rows.ts'
import { checkWords, signWords, swingWords, unitWord } from './offsets-words.ts'

/** The tables of all ramps as plain text, columns set on the point or the fraction; what is no table in lines of so many letters. */
export const offsetsText = (
  title: string,
  all: readonly Offsets[],
  units: Units,
  columns = textColumns,
): string =>
  [
    `${title}: offsets of the side's curve (lengths in ${unitWord(units)})`,
    ...all.flatMap((offsets) => ['', ...rampText(offsets, units, all.length > 1, columns)]),
    '',
  ].join('\n')

const rampText = (offsets: Offsets, units: Units, several: boolean, columns: number): readonly string[] => {
  const rows = offsetRows(offsets, units)
  const back = column('back', rows, (row) => row.back)
  const up = column('up', rows, (row) => row.up)
  return [
    ...(several ? [offsets.ramp] : []),
    `  mark  ${back.head}   ${up.head}    back from the front edge, up from the bottom edge`,
    ...rows.map((row, i) =>
      `  ${row.mark.padEnd(4)}  ${back.cells[i]}   ${up.cells[i]}    ${row.words}`.trimEnd(),
    ),
    ...[
      signWords(rows),
      ...checkWords(offsets, units),
      ...swingWords(offsets, units).map((line, i) =>
        i === 0 ? `Or with a swing arm: s${line.slice(1)}` : line,
      ),
    ].flatMap((line) => (line === '' ? [] : wrapLine(`  ${line}`, columns, 4))),
  ]
}

const column = (
  head: string,
  rows: readonly OffsetRow[],
  of: (row: OffsetRow) => string,
): { readonly head: string; readonly cells: readonly string[] } => {
  const parts = rows.map((row) => figureParts(of(row)))
  const before = Math.max(...parts.map(([whole]) => whole.length))
  // a fraction stands off its inches, a decimal and a sign do not
  const seam = (rest: string): string => (/^\d/.test(rest) ? ' ' : '')
  const cells = parts.map(([whole, rest]) => whole.padStart(before) + seam(rest) + rest)
  const width = Math.max(head.length, ...cells.map((cell) => cell.length))
  return {
    head: head.padStart(Math.max(head.length, before)).padEnd(width),
    cells: cells.map((cell) => cell.padEnd(width)),
  }
}
