import { lineWords } from '../length/words.ts'

/** Columns that a line of ours takes at most on a terminal. */
const columns = 120

/** A line that is longer goes on below, indented, so that its beginning stands out. */
export const wrap = (line: string, indent = 6): string => {
  const lines: string[] = []
  for (const word of lineWords(line)) {
    const last = lines.at(-1)
    if (last === undefined) lines.push(word)
    else if (last.length + 1 + word.length <= columns) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(`${' '.repeat(indent)}${word}`)
  }
  return lines.join('\n')
}
