/** What may not reach a terminal: control, format (bidi overrides, joiners), line and paragraph marks, lone surrogates. */
const harmful = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu

/** The same number of UTF-16 units, so that columns still match: a tab becomes one space, the rest `?`. */
export const harmless = (text: string): string =>
  text.replace(harmful, (c) => (c === '\t' ? ' ' : '?'.repeat(c.length)))

/** A foreign value as messages show it: harmless, at most `most` letters, between backticks. */
export const quote = (text: string, most = 40): string => {
  const letters = [...harmless(text.slice(0, 4 * most))]
  return `\`${letters.length > most ? `${letters.slice(0, most - 1).join('')}…` : letters.join('')}\``
}
