import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { deflateSync } from 'node:zlib'
import type { PdfPlatform } from '../../src/write/pdf-input.ts'

const require = createRequire(import.meta.url)
const font = (name: string) => readFile(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))

/** What the command line hands to the PDF writer, with Node's own zlib and hashes. */
export const platform: PdfPlatform = {
  deflate: (bytes) => deflateSync(bytes),
  digest: (bytes) => createHash('sha256').update(bytes).digest().subarray(0, 16),
  wideFont: async () => ({
    regular: await font('DejaVuSansCondensed'),
    bold: await font('DejaVuSansCondensed-Bold'),
  }),
}
