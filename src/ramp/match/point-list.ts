import type { Point } from '../../geometry/point.ts'
import { countWords } from '../../length/count-words.ts'
import { quote } from '../../length/quote.ts'
import { readLength, type Units } from '../../length.ts'
import { leastPoints } from './circle-fit.ts'

/** A fault of the list: line and column from 1, what stands there and what should. */
export interface ListFault {
  readonly line: number
  readonly column: number
  readonly message: string
}

export type PointList =
  | { readonly points: readonly Point[]; readonly lines: readonly number[] }
  | { readonly faults: readonly ListFault[] }

/** More than anyone measures by hand. */
const mostPoints = 500
const mostLetters = 64 * 1024
/** No ramp of a back yard is larger, mm. */
const farthest = 20_000

interface Cell {
  readonly text: string
  readonly column: number
}

/**
 * What may part the cells of a line. As the first line has it: with semicolons or tabs no comma parts, as it may be a decimal one;
 * with blanks none between two figures.
 */
const marksOf = (first: string): readonly RegExp[] =>
  /[;\t]/.test(first) ? [/[;\t]/] : first.includes(',') ? [/,/, /[;\t]/] : [/[;\t]/, /,(?=\s)/]

/** What parts the cells of a first line without commas, in words. */
const markWords = (first: string): string =>
  first.includes(';') ? 'a `;`' : first.includes('\t') ? 'a tab' : 'a blank'

/** Two values with a comma between them, where the first line has something else there: as likely as a decimal comma. */
const commaFault = (cells: readonly Cell[], first: string): Omit<ListFault, 'line'> | null => {
  const [only, ...others] = cells.filter((cell) => cell.text !== '')
  if (only === undefined || others.length > 0 || !/^-?[^,]*\d,[^,]+$/.test(only.text)) return null
  const message = `${quote(only.text)} has a comma; part the two by ${markWords(first)}, as the first line does`
  return { column: only.column, message }
}

/** Cells of a line: parted by the first of the marks that it has, by blanks where it has none. */
const cellsOf = (line: string, marks: readonly RegExp[]): readonly Cell[] => {
  const mark = marks.find((one) => one.test(line))
  if (mark === undefined)
    return [...line.matchAll(/\S+/g)].map(({ 0: text, index }) => ({ text, column: index + 1 }))
  const cells: Cell[] = []
  let at = 1
  for (const text of line.split(mark)) {
    cells.push({
      text: text
        .trim()
        .replace(/^"(.*)"$/, '$1')
        .replaceAll('""', '"'),
      column: at + text.length - text.trimStart().length,
    })
    at += text.length + 1
  }
  return cells
}

/**
 * Measured points as a builder lists them: a line each, along the floor and up. A first line may name the columns `x` and `y`;
 * others are passed over. Empty lines and what follows `#` too. A bare number is read in `units`.
 */
export const readPoints = (text: string, units: Units): PointList => {
  if (text.length > mostLetters)
    return {
      faults: [
        { line: 1, column: 1, message: 'this is longer than any list of points: is it the right file?' },
      ],
    }
  const typed = text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map((line) => line.replace(/#.*$/, '').trimEnd())
  const first = typed.find((line) => line !== '') ?? ''
  const marks = marksOf(first)
  const rows = typed
    .map((line, i) => ({ line: i + 1, cells: cellsOf(line, marks) }))
    .filter(({ cells }) => cells.some((cell) => cell.text !== ''))
  const faults: ListFault[] = []
  const names = rows[0]?.cells.map((cell) => cell.text.toLowerCase()) ?? []
  const named = names.some((name) => /^[a-z_ ]+$/.test(name))
  const [x, y] = named ? [names.indexOf('x'), names.indexOf('y')] : [0, 1]
  if (named && (x < 0 || y < 0))
    faults.push({
      line: rows[0]!.line,
      column: 1,
      message: `the first line names ${names.map((name) => quote(name)).join(', ')}; name the columns x (along the floor) and y (up)`,
    })
  const points: Point[] = []
  const lines: number[] = []
  for (const { line, cells } of faults.length > 0 ? [] : rows.slice(named ? 1 : 0)) {
    const beyond = cells.slice(named ? names.length : 2).find((cell) => cell.text !== '')
    if (beyond !== undefined) {
      faults.push({ line, column: beyond.column, message: beyondWords(beyond.text, named) })
      continue
    }
    const comma = commaFault(cells, first)
    if (comma !== null) {
      faults.push({ line, ...comma })
      continue
    }
    const [along, up] = [x, y].map((at) => lengthOf(cells[at], line, units, faults))
    if (along === undefined || up === undefined) continue
    points.push({ x: along, y: up })
    lines.push(line)
  }
  if (faults.length === 0 && points.length < leastPoints)
    faults.push({
      line: 1,
      column: 1,
      message: `${countWords(points.length, 'point')}; a circle needs at least ${leastPoints}, better nine`,
    })
  if (points.length > mostPoints)
    faults.push({
      line: lines[mostPoints]!,
      column: 1,
      message: `more than ${mostPoints} points; leave some out`,
    })
  return faults.length > 0 ? { faults } : { points, lines }
}

const beyondWords = (text: string, named: boolean): string =>
  named
    ? `${quote(text)} is more than the first line names; write decimals with a point`
    : `${quote(text)} is a third value, and a point is two: along the floor, and up; write decimals with a point, a \`;\` between the two, or name the columns in a first line, as no;x;y`

/** A reading's error, which mostly begins with what it is about. */
const told = (text: string, error: string): string =>
  error.startsWith(quote(text)) ? error : `${quote(text)}: ${error}`

const lengthOf = (
  cell: Cell | undefined,
  line: number,
  units: Units,
  faults: ListFault[],
): number | undefined => {
  if (cell === undefined || cell.text === '') {
    faults.push({
      line,
      column: cell?.column ?? 1,
      message: 'a point needs two lengths: along the floor, and up',
    })
    return undefined
  }
  const reading = readLength(cell.text, units)
  const message =
    'error' in reading
      ? told(cell.text, reading.error)
      : Math.abs(reading.mm) > farthest
        ? `${quote(cell.text)} is more than ${farthest / 1000} m; is the unit right?`
        : null
  if (message === null) return (reading as { readonly mm: number }).mm
  faults.push({ line, column: cell.column, message })
  return undefined
}
