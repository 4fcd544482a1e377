import type { Face } from './drawing.ts'
import { helveticaCapHeight, helveticaWidths } from './helvetica.ts'
import { winAnsiCode } from './win-ansi.ts'

/** Taken for a letter that Helvetica lacks, per 1000 em: the writer squeezes what comes out wider. */
const otherWidth = 700

/** Width of a text in mm, `size` the height of a capital in mm. Exact for WinAnsi; 0.7 em for any other letter. */
export const textWidth = (text: string, size: number, face: Face): number => {
  let sum = 0
  for (const letter of text.normalize('NFC')) {
    const code = winAnsiCode(letter)
    sum += code === undefined ? otherWidth : helveticaWidths[face][code - 32]!
  }
  return (sum * size) / helveticaCapHeight
}
