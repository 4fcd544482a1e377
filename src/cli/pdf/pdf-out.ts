import { harmless } from '../../length/quote.ts'
import { Failure } from '../failure.ts'
import { checkPdf, writeOut } from '../files.ts'
import type { Shell } from '../shell.ts'

/** Where a PDF goes, and the words about it. */
export interface PdfOut {
  /** as the words name it */
  readonly name: string
  readonly write: (content: Uint8Array) => void
  readonly say: (text: string) => void
}

interface Asked {
  readonly force?: boolean
  readonly json?: boolean
}

/**
 * A file, or with `-` standard output; then the words go beside it. Asked before the work is done. `source`: what the command
 * reads.
 */
export const pdfOut = (
  out: string,
  { force = false, json = false }: Asked,
  shell: Shell,
  source?: string,
): PdfOut => {
  if (out !== '-') {
    checkPdf(out, force, source)
    return { name: harmless(out), write: (content) => writeOut(out, content, force), say: shell.out }
  }
  if (json)
    throw new Failure(2, '--out - and --json both take standard output; give the PDF the name of a file')
  const { bytes } = shell
  if (!bytes)
    throw new Failure(
      2,
      'cannot write -: standard output is a screen; pipe it on, or give the name of a file',
    )
  return { name: 'standard output', write: bytes, say: shell.err }
}
