import { setInput } from '../../job/set-input.ts'
import type { PageSet } from '../../page/set/draft.ts'
import type { PdfOutput } from '../../write/pdf.ts'
import type { Progress } from '../shell.ts'
import type { PdfOut } from './pdf-out.ts'
import { pdfOf } from './write-pdf.ts'

/** A set as a PDF with its plan attached. */
export const setPdf = async (set: PageSet, title: string, progress?: Progress): Promise<PdfOutput> => {
  const input = setInput(set, title)
  const pages = input.pages.map((page, i) => ({
    ...page,
    draw: () => {
      progress?.at(i + 1, input.pages.length)
      return page.draw()
    },
  }))
  try {
    return await pdfOf({ ...input, pages })
  } finally {
    progress?.end()
  }
}

/** Writes it; what could not be printed comes back as warnings. */
export const writeSet = async (
  set: PageSet,
  title: string,
  out: PdfOut,
  progress?: Progress,
): Promise<readonly string[]> => {
  const { bytes, warnings } = await setPdf(set, title, progress)
  out.write(bytes)
  return warnings
}
