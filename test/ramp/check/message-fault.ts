const nouns =
  'stud|sheet|screw|layer|rib|bay|row|piece|hole|seam|timber|tile|page|side|ramp|panel|length|board|wheel|pipe'

/** Values of keys, which may be nothing, and fractions, which may end in one. */
const plainly = (message: string): string =>
  message
    .replace(/`[^`]*`(?: \(?-?0\b\)?)?/g, 'K')
    .replace(/\([^)]* now\)/g, '')
    .replace(/\b(?:a toe of|lower the tangent to) 0\b/g, 'K')
    .replace(/\d+ \d+\/\d+|\d+\/\d+/g, 'N')

const faults: readonly RegExp[] = [
  // 0 mm above, 0 in behind
  /(?<![\d.,–-])\b0(?:\.0+)? (?:mm|in)\b/,
  new RegExp(`(?<![\\d.,–-])\\b0(?:\\.0)? (?:of|${nouns})`),
  new RegExp(`(?<![\\d.,N] ?)\\b[01] (?:${nouns})s\\b`),
  new RegExp(`(?<![\\d.,])\\b(?:[2-9]|\\d\\d+) (?:${nouns})\\b(?![ -])`),
  /\bNaN\b|Infinity|undefined|null\b|\[object|\s\s/,
]

/** A quantity of nothing, one of many or many of one, in a message; null where there is none. */
export const messageFault = (message: string): string | null => {
  const text = plainly(message)
  for (const fault of faults) {
    const found = fault.exec(text)
    if (found) return found[0]
  }
  return null
}
