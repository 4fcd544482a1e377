import type { Point } from '../geometry/point.ts'
import { lineWords } from '../length/words.ts'
import { type Drawing, type Face, type Layer, text } from './drawing.ts'
import { textWidth } from './text-width.ts'

/** Words broken into lines that fit a width, mm. A word that is wider stands alone. */
export const wrapWords = (
  words: string,
  width: number,
  size: number,
  face: Face = 'regular',
): readonly string[] => {
  const lines: string[] = []
  const space = textWidth(' ', size, face)
  let filled = Number.POSITIVE_INFINITY
  for (const word of lineWords(words)) {
    const wide = textWidth(word, size, face)
    if (filled + space + wide <= width) {
      lines[lines.length - 1] += ` ${word}`
      filled += space + wide
    } else {
      lines.push(word)
      filled = wide
    }
  }
  return lines
}

export interface ParagraphStyle {
  readonly layer: Layer
  readonly width: number
  readonly size: number
  readonly face?: Face
}

/** A paragraph whose first line's capitals touch `top.y`; `bottom` is where the next one may begin. */
export const paragraph = (
  top: Point,
  words: string,
  { layer, width, size, face = 'regular' }: ParagraphStyle,
): { readonly marks: Drawing; readonly bottom: number } => {
  const lines = wrapWords(words, width, size, face)
  const leading = size * 1.65
  return {
    marks: lines.map((line, i) =>
      text(layer, { x: top.x, y: top.y - size - i * leading }, size, line, { face }),
    ),
    bottom: top.y - size - (lines.length - 1) * leading - size * 0.65,
  }
}
