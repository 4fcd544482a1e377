import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { deflateSync } from 'node:zlib'
import type { PdfPlatform } from '../write/pdf-input.ts'

export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

// the bundle is CommonJS and has `require` already; the sources run as a module in the tests
const load = createRequire(__filename)
const font = (name: string): Uint8Array => readFileSync(load.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))

/** What Node hands to the PDF writer. The wide font is read only when a text needs it. */
export const platform: PdfPlatform = {
  // copied: zlib's own buffers are larger than what they hold, and a set keeps one for each page
  deflate: (bytes) => new Uint8Array(deflateSync(bytes)),
  digest: (bytes) => createHash('sha256').update(bytes).digest().subarray(0, 16),
  wideFont: async () => ({
    fontkit: load('@pdf-lib/fontkit'),
    regular: font('DejaVuSans'),
    bold: font('DejaVuSans-Bold'),
  }),
}
