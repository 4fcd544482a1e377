import type { Face } from '../../drawing/drawing.ts'
import { letterCode } from '../../drawing/letter-code.ts'
import { capitalHeight } from '../../drawing/typeface.ts'
import { capitalOf } from '../type/glyph-box.ts'
import { glyphPaths } from '../type/glyph-paths.ts'
import type { Sfnt } from '../type/sfnt.ts'
import type { Glyph, GlyphSource } from './raster-text.ts'

export type Faces = Readonly<Record<Face, Sfnt>>

/** Shown for a letter that no font has. */
const box = 0x25a1

/** Outlines of letters, each read once: a text that our own face has is set in it, any other in the wide one. */
export const glyphSource = (own: Faces, wide: () => Faces): GlyphSource => {
  const known = new Map<string, Glyph>()
  return (letter, face, coded) => {
    const key = `${face} ${coded} ${letter}`
    const glyph = known.get(key) ?? (coded ? ownGlyph(own[face], letter) : wideGlyph(wide()[face], letter))
    known.set(key, glyph)
    return glyph
  }
}

const ownGlyph = (font: Sfnt, letter: string): Glyph =>
  scaled(font, font.glyphOf(letterCode(letter)!), font.unitsPerEm / capitalHeight)

const wideGlyph = (font: Sfnt, letter: string): Glyph =>
  scaled(font, font.glyphOf(letter.codePointAt(0)!) || font.glyphOf(box), 1 / capitalOf(font))

/** `em`: capitals in an em */
const scaled = (font: Sfnt, glyph: number, em: number): Glyph => {
  const scale = em / font.unitsPerEm
  return { advance: font.advance(glyph) * scale, outlines: glyphPaths(font, glyph, scale) }
}
