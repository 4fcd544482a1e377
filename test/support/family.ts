import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import fontkit from '@pdf-lib/fontkit'
import type { Face } from '../../src/drawing/drawing.ts'

const family = '@expo-google-fonts/ibm-plex-sans-condensed'
const files = {
  regular: '400Regular/IBMPlexSansCondensed_400Regular',
  bold: '700Bold/IBMPlexSansCondensed_700Bold',
}

/** What is asked of another reader of fonts. */
export interface OtherFont {
  readonly unitsPerEm: number
  readonly glyphForCodePoint: (code: number) => OtherGlyph
  readonly getGlyph: (glyph: number) => OtherGlyph
}

interface OtherGlyph {
  readonly advanceWidth: number
  readonly bbox: {
    readonly minX: number
    readonly minY: number
    readonly maxX: number
    readonly maxY: number
  }
  readonly path: {
    readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[]
  }
}

const { create } = fontkit as unknown as { readonly create: (bytes: Uint8Array) => OtherFont }

/** A font as another library reads it. */
export const otherFont = (bytes: Uint8Array): OtherFont => create(bytes)

/** A face of the family that the face of the pages is taken from. */
export const familyFont = (face: Face): OtherFont =>
  create(readFileSync(createRequire(import.meta.url).resolve(`${family}/${files[face]}.ttf`)))

/** Width of a text at a capital height of 1, letter by letter. */
export const familyWidth = (text: string, face: Face): number => {
  const font = familyFont(face)
  const glyphs = [...text].map((letter) => font.glyphForCodePoint(letter.codePointAt(0)!))
  return glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / font.glyphForCodePoint(72).bbox.maxY
}
