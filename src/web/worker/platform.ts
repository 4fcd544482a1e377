import { sha256 as hash } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { inflateSync, zlibSync } from 'fflate'
import type { PdfPlatform } from '../../index.ts'

export const sha256 = (text: string): string => bytesToHex(hash(utf8ToBytes(text)))

/** The wide font as the page holds it: each face packed, in base64. */
export interface PackedFonts {
  readonly regular: string
  readonly bold: string
}

/** What a browser hands to the PDF writer; the wide font is unpacked when a text needs it. */
export const platformWith = ({ regular, bold }: PackedFonts): PdfPlatform => ({
  ...platform,
  wideFont: async () => ({ regular: unpacked(regular), bold: unpacked(bold) }),
})

const unpacked = (text: string): Uint8Array =>
  inflateSync(Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0)))

/** The same without the wide font. */
export const platform: PdfPlatform = {
  deflate: (bytes) => zlibSync(bytes),
  digest: (bytes) => hash(bytes).subarray(0, 16),
}
