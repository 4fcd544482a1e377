/** The words of a line, where it may be broken: not inside `71 3/4 in` or `18 mm`. */
export const lineWords = (line: string): readonly string[] =>
  line.split(/(?<![\d+–]) | (?!\d+\/\d|(?:mm|in)\b)/)
