import type { Point } from '../geometry/point.ts'
import { lineWords } from '../length/words.ts'
import { type Drawing, type Face, type Layer, text } from './drawing.ts'
import { textWidth } from './text-width.ts'

/**
 * Words broken into lines that fit a width, mm. A word that is wider stands alone; a size that is, is broken behind its ×, and a word
 * without end anywhere.
 */
export const wrapWords = (
  words: string,
  width: number,
  size: number,
  face: Face = 'regular',
): readonly string[] =>
  // most cells of tables: one word, which nothing could break
  words.length <= longestWord && !words.includes(' ')
    ? [words]
    : wrapped(measured(words, size, face), width, size, face)

interface Measured {
  readonly word: string
  readonly wide: number
}

const measured = (words: string, size: number, face: Face): readonly Measured[] =>
  lineWords(words).map((word) => ({ word, wide: textWidth(word, size, face) }))

const wrapped = (words: readonly Measured[], width: number, size: number, face: Face): readonly string[] => {
  const lines: string[] = []
  const space = textWidth(' ', size, face)
  let filled = Number.POSITIVE_INFINITY
  const add = (word: string, wide: number): void => {
    if (filled + space + wide <= width) {
      lines[lines.length - 1] += ` ${word}`
      filled += space + wide
    } else {
      lines.push(word)
      filled = wide
    }
  }
  for (const { word, wide } of words)
    if (wide <= width) add(word, wide)
    else for (const piece of broken(word, width, size, face)) add(piece, textWidth(piece, size, face))
  return lines
}

/** Longer ones are no word and no figure, but what somebody typed as a title. */
const longestWord = 24

/** A word too wide in as many pieces as it takes; one that is not without end as it stands. */
const broken = (word: string, width: number, size: number, face: Face): readonly string[] => {
  const sides = word.split(' × ')
  if (sides.length > 1) return sides.map((side, i) => (i < sides.length - 1 ? `${side} ×` : side))
  if (word.length <= longestWord) return [word]
  const pieces: string[] = []
  let filled = Number.POSITIVE_INFINITY
  for (const letter of word) {
    const wide = textWidth(letter, size, face)
    if (filled + wide <= width) {
      pieces[pieces.length - 1] += letter
      filled += wide
    } else {
      pieces.push(letter)
      filled = wide
    }
  }
  return pieces
}

/** Shares of a width that are tried so that no word stands alone on the last line, and how much of a line is more than alone. */
const narrower = [0.98, 0.96, 0.94, 0.92, 0.9, 0.88]
const alone = 0.1

/** The same in as many lines, broken sooner where one short word would stand alone on the last. */
const evenLines = (words: string, width: number, size: number, face: Face): readonly string[] => {
  // measured once for all that is tried
  const all = measured(words, size, face)
  const lines = wrapped(all, width, size, face)
  const isAlone = (some: readonly string[]): boolean =>
    some.length > 1 && textWidth(some.at(-1)!, size, face) < alone * width
  if (!isAlone(lines)) return lines
  for (const share of narrower) {
    const others = wrapped(all, width * share, size, face)
    if (others.length > lines.length) break
    if (!isAlone(others)) return others
  }
  return lines
}

export interface ParagraphStyle {
  readonly layer: Layer
  readonly width: number
  readonly size: number
  readonly face?: Face
  /** no short word alone on the last line */
  readonly even?: boolean
}

/** A paragraph whose first line's capitals touch `top.y`; `bottom` is where the next one may begin. */
export const paragraph = (
  top: Point,
  words: string,
  { layer, width, size, face = 'regular', even = false }: ParagraphStyle,
): { readonly marks: Drawing; readonly bottom: number } => {
  const lines = (even ? evenLines : wrapWords)(words, width, size, face)
  const leading = size * 1.65
  return {
    marks: lines.map((line, i) =>
      text(layer, { x: top.x, y: top.y - size - i * leading }, size, line, { face }),
    ),
    bottom: top.y - size - (lines.length - 1) * leading - size * 0.65,
  }
}
