import { type PDFContext, type PDFRef, PDFString } from 'pdf-lib'
import type { Face } from '../../drawing/drawing.ts'
import type { PdfPlatform } from '../pdf-input.ts'
import { capitalOf } from './glyph-box.ts'
import { stem, subsetName } from './own-face.ts'
import type { Sfnt } from './sfnt.ts'
import { subsetFont } from './subset.ts'
import { toUnicode } from './to-unicode.ts'
import { visualLetters } from './visual-order.ts'

/** A face of the large font: letters are taken from it as texts ask for them. */
export interface WideFace {
  readonly has: (letter: string) => boolean
  /** At a capital height of 1: em, width, operand of Tj. Letters it lacks are shown as a box. */
  readonly layOut: (text: string) => { readonly em: number; readonly width: number; readonly shown: string }
  readonly isUsed: () => boolean
  readonly embed: (context: PDFContext, deflate: PdfPlatform['deflate']) => PDFRef
}

export const box = '□'

export const createWideFace = (font: Sfnt, face: Face): WideFace => {
  const em = 1 / capitalOf(font)
  /** glyphs in the order of their codes from 1 on, with the letters that they show */
  const used = new Map<number, string>()
  const codes = new Map<number, number>()
  const has = (letter: string): boolean => font.glyphOf(letter.codePointAt(0)!) !== 0

  const codeOf = (letter: string): number => {
    const glyph = font.glyphOf(letter.codePointAt(0)!)
    if (!codes.has(glyph)) {
      codes.set(glyph, codes.size + 1)
      used.set(glyph, letter.normalize('NFKC'))
    }
    return codes.get(glyph)!
  }
  return {
    has,
    layOut: (text) => {
      const letters = visualLetters(text).map((letter) => (has(letter) ? letter : box))
      const units = letters.reduce(
        (sum, letter) => sum + font.advance(font.glyphOf(letter.codePointAt(0)!)),
        0,
      )
      const shown = letters.map((letter) => codeOf(letter).toString(16).padStart(4, '0')).join('')
      return { em, width: (units / font.unitsPerEm) * em, shown: `<${shown}>` }
    },
    isUsed: () => codes.size > 0,
    embed: (context, deflate) => embedWide(context, font, face, used, deflate),
  }
}

const embedWide = (
  context: PDFContext,
  font: Sfnt,
  face: Face,
  used: ReadonlyMap<number, string>,
  deflate: PdfPlatform['deflate'],
): PDFRef => {
  const name = subsetName('Wide', face)
  const glyphs = [...used.keys()]
  const perEm = (units: number): number => Math.round((1e5 * units) / font.unitsPerEm) / 100
  const { bytes } = subsetFont(font, glyphs)
  const packed = (stream: Uint8Array, more: Record<string, number> = {}): PDFRef =>
    context.register(context.stream(deflate(stream), { Filter: 'FlateDecode', ...more }))
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: name,
      Flags: 4,
      FontBBox: font.box.map(perEm),
      ItalicAngle: 0,
      Ascent: perEm(font.ascent),
      Descent: perEm(font.descent),
      CapHeight: perEm(capitalOf(font) * font.unitsPerEm),
      StemV: stem[face],
      FontFile2: packed(bytes, { Length1: bytes.length }),
    }),
  )
  const descendant = context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'CIDFontType2',
      BaseFont: name,
      CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
      FontDescriptor: descriptor,
      CIDToGIDMap: 'Identity',
      W: [1, glyphs.map((glyph) => perEm(font.advance(glyph)))],
    }),
  )
  const letters = glyphs.map((glyph, i) => [i + 1, used.get(glyph)!] as const)
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont: name,
      Encoding: 'Identity-H',
      DescendantFonts: [descendant],
      ToUnicode: packed(new TextEncoder().encode(toUnicode(letters, 2))),
    }),
  )
}
