const number = /^[-+]?[\d½¼¾⅛⅜⅝⅞]/
/** A number, maybe with its unit, or a unit or the x of a size alone. */
const partOfLength =
  /^(?:[-+]?[\d½¼¾⅛⅜⅝⅞][\d.,/½¼¾⅛⅜⅝⅞]{0,20}(?:mm|cm|m|in|ft|["'])?,?|(?:mm|cm|m|in|ft|x|×),?)$/i

/** The words from the first on that are meant as one value: more follows a comma, and a length goes on. */
const asOneValue = (words: readonly string[]): readonly string[] => {
  const [first = ''] = words
  const goesOn = (word: string, before: string): boolean =>
    !word.startsWith('--') && (before.endsWith(',') || (number.test(first) && partOfLength.test(word)))
  const end = words.findIndex((word, i) => i > 0 && !goesOn(word, words[i - 1]!))
  return words.slice(0, end < 0 ? words.length : end)
}

/** How an option is typed whose value has blanks. A mark for inches would end the quotes. */
export const quotedOption = (option: string, words: readonly string[]): string =>
  `what has a blank in it goes in quotes: ${option} "${words.join(' ').replaceAll('"', 'in')}"`

/** The first of these options whose value lies in several words, how it is typed in one: `--height "2 ft"`. */
export const inQuotes = (words: readonly string[], options: readonly string[]): string | null => {
  const said = words.flatMap((word, i) =>
    options.includes(word) ? [{ option: word, value: asOneValue(words.slice(i + 1)) }] : [],
  )
  const split = said.find(({ value }) => value.length > 1)
  return split === undefined ? null : quotedOption(split.option, split.value)
}
