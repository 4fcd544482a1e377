import type { PdfObjects, PdfRef } from './pdf-objects.ts'
import { textString } from './pdf-string.ts'

/** One bookmark a page; undefined where there are no pages. */
export const createOutline = (
  objects: PdfObjects,
  bookmarks: readonly string[],
  pages: readonly PdfRef[],
): PdfRef | undefined => {
  if (bookmarks.length === 0) return undefined
  const root = objects.nextRef()
  const items = bookmarks.map(() => objects.nextRef())
  bookmarks.forEach((bookmark, i) => {
    objects.assign(items[i]!, {
      Title: textString(bookmark),
      Parent: root,
      Dest: [pages[i]!, 'Fit'],
      Prev: items[i - 1],
      Next: items[i + 1],
    })
  })
  objects.assign(root, { Type: 'Outlines', First: items[0]!, Last: items.at(-1)!, Count: items.length })
  return root
}
