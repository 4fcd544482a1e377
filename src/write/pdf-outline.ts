import type { PDFContext, PDFRef } from 'pdf-lib'
import { textString } from './pdf-string.ts'

/** One bookmark a page; undefined where there are no pages. */
export const createOutline = (
  context: PDFContext,
  bookmarks: readonly string[],
  pages: readonly PDFRef[],
): PDFRef | undefined => {
  if (bookmarks.length === 0) return undefined
  const root = context.nextRef()
  const items = bookmarks.map(() => context.nextRef())
  bookmarks.forEach((bookmark, i) => {
    context.assign(
      items[i]!,
      context.obj({
        Title: textString(bookmark),
        Parent: root,
        Dest: [pages[i]!, 'Fit'],
        ...(i > 0 ? { Prev: items[i - 1]! } : {}),
        ...(i + 1 < items.length ? { Next: items[i + 1]! } : {}),
      }),
    )
  })
  context.assign(
    root,
    context.obj({ Type: 'Outlines', First: items[0]!, Last: items.at(-1)!, Count: items.length }),
  )
  return root
}
