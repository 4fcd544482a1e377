import { planName } from '../drawing/set-plan.ts'
import type { PageSet } from '../page/set/draft.ts'
import type { PdfInput } from '../write/pdf-input.ts'

/** A set as the PDF writer takes it, its plan attached. */
export const setInput = (set: PageSet, title: string): PdfInput => {
  const { paper } = set.plan
  return {
    title,
    subject: `Full-size templates on ${paper.name}, set ${set.code}`,
    pages: set.pages.map((page, i) => ({
      ...page,
      width: paper.width,
      height: paper.height,
      proof: { set: set.code, page: i + 1 },
    })),
    attachments: [
      {
        name: planName,
        type: 'application/json',
        description: 'The plan of this set: where each page lies in its pattern',
        bytes: new TextEncoder().encode(JSON.stringify(set.plan)),
      },
    ],
  }
}
