import { formatNumber } from '../drawing/number.ts'

/** A text that a spreadsheet would run as a formula gets an apostrophe before it. */
const cellText = (cell: string | number | null): string => {
  if (cell === null) return ''
  if (typeof cell === 'number') return formatNumber(cell, 4, 'a cell of the table')
  const plain = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain
}

/** Rows as RFC 4180 has them: quoted where they must be, numbers with four decimals at most. Throws RangeError on NaN and infinity. */
export const writeCsv = (rows: readonly (readonly (string | number | null)[])[]): string =>
  rows.map((cells) => `${cells.map(cellText).join(',')}\r\n`).join('')
