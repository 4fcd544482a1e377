/** The words of a line, where it may be broken: not inside `71 3/4 in` or `18 mm`. */
export const lineWords = (line: string): readonly string[] => {
  const words: string[] = []
  let figure = false
  for (const piece of line.split(' ')) {
    if (figure && /^(?:\d+\/\d|(?:mm|in)\b)/.test(piece)) words.push(`${words.pop()} ${piece}`)
    else words.push(piece)
    figure = /[\d+–]$/.test(piece)
  }
  return words
}

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
