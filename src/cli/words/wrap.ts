import { fstatSync } from 'node:fs'
import { textColumns, wrapLine } from '../../length/words.ts'

/** Columns that a line of ours takes at most, and those of a terminal that is narrower; fewer hold no figures. */
const most = 120
const least = 50

/** Columns of the terminal that standard output is; null where it goes elsewhere. Node's stream is loaded for a screen alone. */
export const terminalColumns = (): number | null => {
  try {
    return (fstatSync(1).isCharacterDevice() && process.stdout.columns) || null
  } catch {
    // it is closed
    return null
  }
}

/** Letters of a line of plain text as it is printed: a narrow terminal's, down to what its tables need; else as in a file. */
export const printedColumns = (columns = terminalColumns()): number =>
  Math.min(textColumns, Math.max(60, columns ?? textColumns))

/** A line that is longer goes on below, indented, so that its beginning stands out. `columns`: of the terminal. */
export const wrap = (line: string, indent = 6, columns = terminalColumns()): string =>
  wrapLine(line, Math.min(most, Math.max(least, columns ?? most)), indent).join('\n')
