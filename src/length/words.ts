/** The words of a line, where it may be broken: not inside `71 3/4 in` or `18 mm`, nor inside `1220 × 2440 mm`. */
export const lineWords = (line: string): readonly string[] => {
  const words: string[] = []
  for (const piece of line.split(' ')) {
    const before = words.at(-1)
    if (before !== undefined && isBound(before, piece)) words[words.length - 1] = `${before} ${piece}`
    else words.push(piece)
  }
  return words
}

const isBound = (before: string, piece: string): boolean => {
  if (piece === '×') return /[\d+–](?: (?:mm|in))?$/.test(before)
  if (before.endsWith(' ×')) return /^\d/.test(piece)
  return /[\d+–]$/.test(before) && /^(?:\d+\/\d|(?:mm|in)\b)/.test(piece)
}

/** Letters of a line of plain text at most. */
export const textColumns = 96

/** A line in lines of at most `columns` letters, the later ones indented; a word that is longer stands alone. */
export const wrapLine = (line: string, columns: number, indent: number): readonly string[] => {
  const lines: string[] = []
  for (const word of lineWords(line)) {
    const last = lines.at(-1)
    if (last === undefined) lines.push(word)
    else if (last.length + 1 + word.length <= columns) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(`${' '.repeat(indent)}${word}`)
  }
  return lines
}
