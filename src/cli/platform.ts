import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { deflateSync } from 'node:zlib'
import type { Face } from '../drawing/drawing.ts'
import type { PdfPlatform } from '../write/pdf-input.ts'

// the bundle is CommonJS and has `require` already; the sources run as a module in the tests
const load = createRequire(__filename)
const font = (name: string): Uint8Array => readFileSync(load.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))

// loaded by what needs it: it takes as long as all other modules of Node's together
const hashOf = (data: string | Uint8Array): Buffer =>
  (load('node:crypto') as typeof import('node:crypto')).createHash('sha256').update(data).digest()

export const sha256 = (text: string): string => hashOf(text).toString('hex')

export const readWideFont = (): Readonly<Record<Face, Uint8Array>> => ({
  regular: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
})

/** What Node hands to the PDF writer. The wide font is read only when a text needs it. */
export const platform: PdfPlatform = {
  // copied: zlib's own buffers are larger than what they hold, and a set keeps one for each page
  deflate: (bytes) => new Uint8Array(deflateSync(bytes)),
  digest: (bytes) => hashOf(bytes).subarray(0, 16),
  wideFont: async () => readWideFont(),
}
