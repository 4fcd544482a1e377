import { sha256 as hash } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { zlibSync } from 'fflate'
import type { GlyphSource, PdfPlatform } from '../../index.ts'
import { glyphsOf, type PackedFonts, wideFontOf } from './fonts.ts'

export const sha256 = (text: string): string => bytesToHex(hash(utf8ToBytes(text)))

export interface WebPlatform extends Required<PdfPlatform> {
  readonly glyphs: () => GlyphSource
}

/** What a browser hands to the writers. */
export const platformOf = (fonts: PackedFonts): WebPlatform => ({
  deflate: (bytes) => zlibSync(bytes),
  digest: (bytes) => hash(bytes).subarray(0, 16),
  wideFont: async () => wideFontOf(fonts),
  glyphs: () => glyphsOf(fonts),
})
