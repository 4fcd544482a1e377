/** Columns that a line of ours takes at most on a terminal. */
const columns = 120

/** A blank where a line may end: not inside `71 3/4 in` or `18 mm`. */
const between = /(?<![\d+–]) | (?!\d+\/\d|(?:mm|in)\b)/

/** A line that is longer goes on below, indented, so that its beginning stands out. */
export const wrap = (line: string, indent = 6): string => {
  const lines: string[] = []
  for (const word of line.split(between)) {
    const last = lines.at(-1)
    if (last === undefined) lines.push(word)
    else if (last.length + 1 + word.length <= columns) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(`${' '.repeat(indent)}${word}`)
  }
  return lines.join('\n')
}
