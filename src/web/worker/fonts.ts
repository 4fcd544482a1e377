import { inflateSync, unzlibSync } from 'fflate'
import { type Face, type GlyphSource, glyphSource, programBytes, readSfnt } from '../../index.ts'

/** The wide font as it stands in the page's file: base64 of a raw deflate stream each. */
export type PackedFonts = Readonly<Record<Face, string>>

const unpack = (packed: string): Uint8Array =>
  inflateSync(Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0)))

/** For letters that our own face lacks; unpacked when a text needs it. */
export const wideFontOf = ({ regular, bold }: PackedFonts): Readonly<Record<Face, Uint8Array>> => ({
  regular: unpack(regular),
  bold: unpack(bold),
})

/** Outlines of letters, for pictures. */
export const glyphsOf = (packed: PackedFonts): GlyphSource => {
  const face = (name: Face) => readSfnt(unzlibSync(programBytes(name)))
  return glyphSource({ regular: face('regular'), bold: face('bold') }, () => {
    const { regular, bold } = wideFontOf(packed)
    return { regular: readSfnt(regular), bold: readSfnt(bold) }
  })
}
