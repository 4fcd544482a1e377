import type { PageSet } from '../page/draft.ts'
import type { PdfOutput } from '../write/pdf.ts'
import { writeOut } from './files.ts'
import { platform } from './platform.ts'

/** A set as a PDF with its plan attached. */
export const setPdf = async (set: PageSet, title: string): Promise<PdfOutput> => {
  // loaded here, so that what writes no PDF starts without it
  const { writePdf } = await import('../write/pdf.ts')
  const { paper } = set.plan
  return writePdf(
    {
      title,
      subject: `Full-size templates on ${paper.name}, set ${set.code}`,
      pages: set.pages.map((page) => ({ ...page, width: paper.width, height: paper.height })),
      attachments: [
        {
          name: 'plan.json',
          type: 'application/json',
          description: 'The plan of this set: where each page lies in its pattern',
          bytes: new TextEncoder().encode(JSON.stringify(set.plan)),
        },
      ],
    },
    platform,
  )
}

/** Writes it to a file; what could not be printed comes back as warnings. */
export const writeSet = async (
  set: PageSet,
  title: string,
  out: string,
  force: boolean,
): Promise<readonly string[]> => {
  const { bytes, warnings } = await setPdf(set, title)
  writeOut(out, bytes, force)
  return warnings
}
