import type { PdfOutput } from '../../write/pdf.ts'
import type { PdfInput } from '../../write/pdf-input.ts'
import { platform } from '../platform.ts'

/** The writer is loaded here, so that what writes no PDF starts without it. */
export const pdfOf = async (input: PdfInput): Promise<PdfOutput> => {
  const { writePdf } = await import('../../write/pdf.ts')
  return writePdf(input, platform)
}
