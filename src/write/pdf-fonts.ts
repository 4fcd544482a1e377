import type { PDFContext, PDFRef } from 'pdf-lib'
import type { Drawing, Face } from '../drawing/drawing.ts'
import { isCoded, letterCode } from '../drawing/letter-code.ts'
import { textWidth } from '../drawing/text-width.ts'
import { capitalHeight } from '../drawing/typeface.ts'
import type { PdfPlatform } from './pdf-input.ts'
import { codedString, standsAsItIs } from './pdf-string.ts'
import { embedOwnFace, embedOwnLetters } from './type/own-face.ts'
import { readSfnt } from './type/sfnt.ts'
import { box, createWideFace, type WideFace } from './type/wide-face.ts'

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
  readonly embed: (context: PDFContext) => Record<string, PDFRef>
  /** letters that could not be printed, one line for each text */
  readonly warnings: () => readonly string[]
}

const faces = ['regular', 'bold'] as const
const ownName = { regular: 'F1', bold: 'F2' } as const
const wideName = { regular: 'W1', bold: 'W2' } as const

const needsWide = (drawing: Drawing): boolean => {
  // asked of every mark of a document
  for (const mark of drawing)
    if (
      mark.kind === 'group'
        ? !mark.shared && needsWide(mark.marks)
        : mark.kind === 'text' && !isCoded(mark.text)
    )
      return true
  return false
}

const warning = (text: string, lost: number, mark: string): string => {
  const short = [...text].length > 60 ? `${[...text].slice(0, 60).join('')}…` : text
  return lost === 1
    ? `“${short}”: 1 letter that no built-in font can print is shown as ${mark}`
    : `“${short}”: ${lost} letters that no built-in font can print are shown as ${mark}`
}

/**
 * Our own face for what has a code; the platform's wide font, loaded only then, for a text with other letters: all of it, so that
 * no line changes its face. A letter that neither can print becomes a box, or `?` without a wide font, and is warned about.
 */
export const createFonts = (platform: PdfPlatform): Fonts => {
  let wide: Readonly<Record<Face, WideFace>> | undefined
  const used = new Set<Face>()
  /** texts outside our own face, with what is said of them */
  const noted = new Map<string, string | undefined>()

  const setOwn = (text: string, size: number, face: Face, shown = codedString(text)): SetText => {
    used.add(face)
    return {
      font: ownName[face],
      em: (size * 1000) / capitalHeight,
      width: textWidth(text, size, face),
      squeeze: 1,
      shown,
    }
  }

  // the same words come back on every page: laid out once, at a capital height of 1
  const laidOut = new Map<string, SetText>()
  const setWide = (text: string, size: number, face: Face, from: WideFace): SetText => {
    const key = `${face} ${text}`
    const known = laidOut.get(key)
    const unit = known ?? squeezed(from.layOut(text), wideName[face], textWidth(text, 1, face))
    laidOut.set(key, unit)
    return { ...unit, em: unit.em * size, width: unit.width * size }
  }

  const canPrint = (letter: string, face: Face): boolean =>
    wide ? wide[face].has(letter) : letterCode(letter) !== undefined

  const note = (text: string, face: Face): void => {
    if (noted.has(text)) return
    const lost = [...text].filter((letter) => !canPrint(letter, face)).length
    noted.set(text, lost === 0 ? undefined : warning(text, lost, wide ? box : '?'))
  }

  return {
    prepare: async (drawing) => {
      if (wide || !needsWide(drawing)) return
      const source = await platform.wideFont?.()
      if (!source) return
      const face = (name: Face): WideFace => createWideFace(readSfnt(source[name]), name)
      wide = { regular: face('regular'), bold: face('bold') }
    },
    set: (raw, size, face) => {
      // most texts: asked once, not for each thing that they might need
      if (standsAsItIs(raw)) return setOwn(raw, size, face, `(${raw})`)
      const text = raw.normalize('NFC')
      if (isCoded(text)) return setOwn(text, size, face)
      note(text, face)
      return wide ? setWide(text, size, face, wide[face]) : setOwn(text, size, face)
    },
    embed: (context) => {
      const fonts: Record<string, PDFRef> = {}
      const letters = embedOwnLetters(context, platform.deflate)
      for (const face of faces) {
        if (used.has(face)) fonts[ownName[face]] = embedOwnFace(context, face, letters)
        if (wide?.[face].isUsed()) fonts[wideName[face]] = wide[face].embed(context, platform.deflate)
      }
      return fonts
    },
    warnings: () => [...noted.values()].filter((line) => line !== undefined),
  }
}

const squeezed = (
  { em, width, shown }: { readonly em: number; readonly width: number; readonly shown: string },
  font: string,
  room: number,
): SetText => {
  const squeeze = Math.min(1, room / width)
  return { font, em, width: width * squeeze, squeeze, shown }
}
