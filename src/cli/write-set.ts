import type { PageSet } from '../page/draft.ts'
import { writeOut } from './files.ts'
import { platform } from './platform.ts'

/** Writes a set as a PDF with its plan attached; what could not be printed comes back as warnings. */
export const writeSet = async (
  set: PageSet,
  title: string,
  out: string,
  force: boolean,
): Promise<readonly string[]> => {
  // loaded here, so that what writes no PDF starts without it
  const { writePdf } = await import('../write/pdf.ts')
  const { paper } = set.plan
  const { bytes, warnings } = await writePdf(
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
  writeOut(out, bytes, force)
  return warnings
}
