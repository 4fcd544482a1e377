import { wrapLine } from '../length/words.ts'

/** Columns that a line of ours takes at most on a terminal. */
const columns = 120

/** A line that is longer goes on below, indented, so that its beginning stands out. */
export const wrap = (line: string, indent = 6): string => wrapLine(line, columns, indent).join('\n')
