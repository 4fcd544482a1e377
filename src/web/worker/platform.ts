import { sha256 as hash } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { zlibSync } from 'fflate'
import type { PdfPlatform } from '../../index.ts'

export const sha256 = (text: string): string => bytesToHex(hash(utf8ToBytes(text)))

/** What a browser hands to the PDF writer. */
export const platform: PdfPlatform = {
  deflate: (bytes) => zlibSync(bytes),
  digest: (bytes) => hash(bytes).subarray(0, 16),
}
