import { CustomFontSubsetEmbedder, type PDFContext, type PDFRef } from 'pdf-lib'
import type { Drawing, Face } from '../drawing/drawing.ts'
import { helveticaCapHeight } from '../drawing/helvetica.ts'
import { textWidth } from '../drawing/text-width.ts'
import { isWinAnsi, winAnsiCode } from '../drawing/win-ansi.ts'
import type { PdfPlatform } from './pdf-input.ts'
import { winAnsiString } from './pdf-string.ts'

/** A text ready to be shown. */
export interface SetText {
  /** resource name */
  readonly font: string
  /** em and width in the unit of the size that was asked for */
  readonly em: number
  readonly width: number
  /** stretch along the baseline; below 1 where the wide font would outgrow `textWidth` */
  readonly squeeze: number
  /** operand of Tj */
  readonly shown: string
}

export interface Fonts {
  /** loads what the texts of a drawing need; to be awaited before they are set */
  readonly prepare: (drawing: Drawing) => Promise<void>
  /** `size` is the height of a capital letter */
  readonly set: (text: string, size: number, face: Face) => SetText
  /** the Font resources, once every text is set */
  readonly embed: (context: PDFContext) => Promise<Record<string, PDFRef>>
  /** letters that could not be printed, one line for each text */
  readonly warnings: () => readonly string[]
}

type WideFonts = Readonly<Record<Face, CustomFontSubsetEmbedder>>

const standard = {
  regular: { name: 'F1', base: 'Helvetica' },
  bold: { name: 'F2', base: 'Helvetica-Bold' },
} as const
const box = '□'
const wideName = { regular: 'W1', bold: 'W2' } as const

const needsWide = (drawing: Drawing): boolean =>
  drawing.some((mark) =>
    mark.kind === 'group' ? needsWide(mark.marks) : mark.kind === 'text' && !isWinAnsi(mark.text),
  )

const loadWide = async (platform: PdfPlatform): Promise<WideFonts | undefined> => {
  const source = await platform.wideFont?.()
  if (!source) return undefined
  const load = (bytes: Uint8Array, name: string) =>
    CustomFontSubsetEmbedder.for(
      source.fontkit as Parameters<typeof CustomFontSubsetEmbedder.for>[0],
      bytes,
      // a subset's name starts with six capitals (ISO 32000-1, 9.6.4)
      `TRACEP+${name}`,
    )
  return { regular: await load(source.regular, 'Wide'), bold: await load(source.bold, 'WideBold') }
}

const warning = (text: string, lost: number, mark: string): string => {
  const short = [...text].length > 60 ? `${[...text].slice(0, 60).join('')}…` : text
  return lost === 1
    ? `“${short}”: 1 letter that no built-in font can print is shown as ${mark}`
    : `“${short}”: ${lost} letters that no built-in font can print are shown as ${mark}`
}

/**
 * The standard Helvetica for what WinAnsi holds; the platform's wide font, loaded only then, for a text with other
 * letters. A letter that neither can print becomes a box, or `?` without a wide font, and is warned about.
 */
export const createFonts = (platform: PdfPlatform): Fonts => {
  let wide: WideFonts | undefined
  const used = new Set<Face>()
  /** texts outside WinAnsi, with what is said of them */
  const noted = new Map<string, string | undefined>()

  const setStandard = (text: string, size: number, face: Face): SetText => ({
    font: standard[face].name,
    em: (size * 1000) / helveticaCapHeight,
    width: textWidth(text, size, face),
    squeeze: 1,
    shown: winAnsiString(text),
  })

  const layOut = (text: string, face: Face, embedder: CustomFontSubsetEmbedder): SetText => {
    used.add(face)
    const { font } = embedder
    const letters = [...text].map((letter) =>
      font.hasGlyphForCodePoint(letter.codePointAt(0)!) ? letter : box,
    )
    const printable = letters.join('')
    // not every font states its capital height: the H shows it
    const em = font.unitsPerEm / font.glyphForCodePoint(72).bbox.maxY
    const shown = embedder.encodeText(printable).toString()
    const width = embedder.widthOfTextAtSize(printable, em)
    const squeeze = Math.min(1, textWidth(text, 1, face) / width)
    return { font: wideName[face], em, width: width * squeeze, squeeze, shown }
  }
  // the same words come back on every page: laid out once, at a capital height of 1
  const laidOut = new Map<string, SetText>()
  const setWide = (text: string, size: number, face: Face, embedder: CustomFontSubsetEmbedder): SetText => {
    const key = `${face} ${text}`
    const unit = laidOut.get(key) ?? layOut(text, face, embedder)
    laidOut.set(key, unit)
    return { ...unit, em: unit.em * size, width: unit.width * size }
  }

  const canPrint = (letter: string, face: Face): boolean =>
    wide ? wide[face].font.hasGlyphForCodePoint(letter.codePointAt(0)!) : winAnsiCode(letter) !== undefined

  const note = (text: string, face: Face): void => {
    if (noted.has(text)) return
    const lost = [...text].filter((letter) => !canPrint(letter, face)).length
    noted.set(text, lost === 0 ? undefined : warning(text, lost, wide ? box : '?'))
  }

  return {
    prepare: async (drawing) => {
      if (!wide && needsWide(drawing)) wide = await loadWide(platform)
    },
    set: (raw, size, face) => {
      const text = raw.normalize('NFC')
      if (isWinAnsi(text)) return setStandard(text, size, face)
      note(text, face)
      return wide ? setWide(text, size, face, wide[face]) : setStandard(text, size, face)
    },
    embed: async (context) => {
      const fonts: Record<string, PDFRef> = {}
      for (const { name, base } of Object.values(standard))
        fonts[name] = context.register(
          context.obj({ Type: 'Font', Subtype: 'Type1', BaseFont: base, Encoding: 'WinAnsiEncoding' }),
        )
      for (const face of ['regular', 'bold'] as const)
        if (wide && used.has(face)) fonts[wideName[face]] = await wide[face].embedIntoContext(context)
      return fonts
    },
    warnings: () => [...noted.values()].filter((line) => line !== undefined),
  }
}
