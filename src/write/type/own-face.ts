import type { PDFContext, PDFRef } from 'pdf-lib'
import type { Face } from '../../drawing/drawing.ts'
import { codedLetters } from '../../drawing/letter-code.ts'
import { capitalHeight, faceWidths } from '../../drawing/typeface.ts'
import type { PdfPlatform } from '../pdf-input.ts'
import { programBytes } from './program-bytes.ts'
import { fontPrograms } from './programs.ts'
import { toUnicode } from './to-unicode.ts'

/** A subset's name starts with six capitals (ISO 32000-1, 9.6.4). */
export const subsetName = (name: string, face: Face): string =>
  `TRACEP+${name}-${face === 'regular' ? 'Regular' : 'Bold'}`

/** Thickness of upright stems, per 1000 em: what a reader would use that had to swap the font. */
export const stem = { regular: 80, bold: 140 } as const

/** What both faces say of their codes. */
export const embedOwnLetters = (context: PDFContext, deflate: PdfPlatform['deflate']): PDFRef =>
  context.register(
    context.stream(deflate(new TextEncoder().encode(toUnicode(codedLetters(), 1))), {
      Filter: 'FlateDecode',
    }),
  )

/** Our own face as a font of the file: packed when the program was built, only copied here. */
export const embedOwnFace = (context: PDFContext, face: Face, letters: PDFRef): PDFRef => {
  const { box, ascent, descent, length } = fontPrograms[face]
  const name = subsetName('Traceply', face)
  const file = context.register(
    context.stream(programBytes(face), { Filter: 'FlateDecode', Length1: length }),
  )
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: name,
      // symbolic: codes lead to letters by the font's own table
      Flags: 4,
      FontBBox: [...box],
      ItalicAngle: 0,
      Ascent: ascent,
      Descent: descent,
      CapHeight: capitalHeight,
      StemV: stem[face],
      FontFile2: file,
    }),
  )
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'TrueType',
      BaseFont: name,
      FirstChar: 1,
      LastChar: 255,
      Widths: [...faceWidths[face]],
      FontDescriptor: descriptor,
      ToUnicode: letters,
    }),
  )
}
