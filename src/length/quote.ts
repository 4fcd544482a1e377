/** What may not reach a terminal: control, format (bidi overrides, joiners), line and paragraph marks, lone surrogates. */
const harmful = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu

/** What most texts are made of, none of it harmful: for these V8 builds no table of what is. */
const usual = /^[ -~\u00a0-\u00ac\u00ae-\u024f\u2010-\u2027\u2030-\u205e]*$/

/** The same number of UTF-16 units, so that columns still match: a tab becomes one space, the rest `?`. */
export const harmless = (text: string): string =>
  usual.test(text) ? text : text.replace(harmful, (c) => (c === '\t' ? ' ' : '?'.repeat(c.length)))

/** A foreign value as messages show it: harmless, at most `most` letters, between backticks. */
export const quote = (text: string, most = 40): string => {
  const letters = [...harmless(text.slice(0, 4 * most))]
  return `\`${letters.length > most ? `${letters.slice(0, most - 1).join('')}…` : letters.join('')}\``
}
