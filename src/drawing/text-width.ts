import type { Face } from './drawing.ts'
import { letterCode } from './letter-code.ts'
import { capitalHeight, faceWidths } from './typeface.ts'

/** Taken for a letter that our own face lacks, per 1000 em: the writer squeezes what comes out wider. */
const otherWidth = 700

/** Width of a text in mm, `size` the height of a capital in mm. Exact for our own face; 0.7 em for any other letter. */
export const textWidth = (text: string, size: number, face: Face): number =>
  ((plainEms(text, face) ?? ems(text, face)) * size) / capitalHeight

/** Asked so often that letters with a code are looked up as they stand; null where the text holds another. Per 1000 em. */
const plainEms = (text: string, face: Face): number | null => {
  const widths = faceWidths[face]
  let sum = 0
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    const code = unit >= 32 && unit <= 126 ? unit : letterCode(text.charAt(i))
    if (code === undefined) return null
    sum += widths[code - 1]!
  }
  return sum
}

const ems = (text: string, face: Face): number => {
  let sum = 0
  for (const letter of text.normalize('NFC')) {
    const code = letterCode(letter)
    sum += code === undefined ? otherWidth : faceWidths[face][code - 1]!
  }
  return sum
}
