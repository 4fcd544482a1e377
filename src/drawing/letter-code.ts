/**
 * One byte a letter, as our own face is written: the codes of WinAnsi, and other letters of our trade where WinAnsi has none.
 * A table of the file says the letters to readers (ToUnicode).
 */

/** The letters of WinAnsi codes 128 … 159 (ISO 32000-1 annex D); a dot stands where there is none. */
const upper = '€.‚ƒ„…†‡ˆ‰Š‹Œ.Ž..‘’“”•–—˜™š›œ.žŸ'
/** Codes 1 …: figures, inches and feet, arrows. */
const lower = '−≤≥≈≠√′″←↑→↓⅛⅜⅝⅞⅓⅔π∞'

const codes = new Map([
  ...[...upper].flatMap((letter, i): [string, number][] => (letter === '.' ? [] : [[letter, 128 + i]])),
  ...[...lower].map((letter, i): [string, number] => [letter, 1 + i]),
])

/** The code of one letter, undefined where it has none; control characters have none. */
export const letterCode = (letter: string): number | undefined => {
  const point = letter.codePointAt(0) ?? 0
  if ((point >= 32 && point < 127) || (point >= 160 && point < 256)) return point
  return codes.get(letter)
}

/** Every letter that has a code, in the order of the codes. */
export const codedLetters = (): readonly (readonly [code: number, letter: string])[] => [
  ...[...lower].map((letter, i) => [1 + i, letter] as const),
  ...Array.from({ length: 95 }, (_, i) => [32 + i, String.fromCharCode(32 + i)] as const),
  ...[...upper].flatMap((letter, i) => (letter === '.' ? [] : [[128 + i, letter] as const])),
  ...Array.from({ length: 96 }, (_, i) => [160 + i, String.fromCharCode(160 + i)] as const),
]

const plain = /^[ -~]*$/

/** Most texts: each letter is its own code, none has an accent. */
const isPlain = (text: string): boolean => plain.test(text)

/** Whether our own face can print the text, accents composed (NFC). */
export const isCoded = (text: string): boolean => {
  if (isPlain(text)) return true
  for (const letter of text.normalize('NFC')) if (letterCode(letter) === undefined) return false
  return true
}
