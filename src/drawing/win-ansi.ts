/** The letters of WinAnsi codes 128 … 159 (ISO 32000-1 annex D); a dot stands where there is none. */
const upper = '€.‚ƒ„…†‡ˆ‰Š‹Œ.Ž..‘’“”•–—˜™š›œ.žŸ'
const codes = new Map([...upper].flatMap((letter, i) => (letter === '.' ? [] : [[letter, 128 + i]])))

/** The WinAnsi code of one letter (32 … 255), undefined where it has none; control characters have none. */
export const winAnsiCode = (letter: string): number | undefined => {
  const point = letter.codePointAt(0) ?? 0
  if ((point >= 32 && point < 127) || (point >= 160 && point < 256)) return point
  return codes.get(letter)
}

/** Whether the standard fonts of every PDF reader can print the text, accents composed (NFC). */
export const isWinAnsi = (text: string): boolean => {
  for (const letter of text.normalize('NFC')) if (winAnsiCode(letter) === undefined) return false
  return true
}
