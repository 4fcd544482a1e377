import { type PDFContext, PDFDict, PDFRef } from 'pdf-lib'

/**
 * A file has as many trailers as it was saved times, and one put in order for the web has two; the parser keeps the last alone.
 * They are looked for in the text of the file (ISO 32000-1, 7.5.5): each names the catalog as its `Root`.
 */
const near = 600

/** What trailers say of a key, the last first. */
const saidOf = (text: string, key: string): readonly string[] => {
  const found: string[] = []
  for (let at = text.lastIndexOf(key); at >= 0; at = at === 0 ? -1 : text.lastIndexOf(key, at - 1)) {
    const around = text.slice(Math.max(0, at - near), at + near)
    if (around.includes('/Root')) found.push(text.slice(at + key.length, at + key.length + 40))
  }
  return found
}

/** Whether a file needs a password, or is locked against changes. */
export const isLocked = (text: string): boolean =>
  saidOf(text, '/Encrypt').some((words) => /^\s*(?:\d+\s+\d+\s+R|<<)/.test(words))

/** The dictionary of title and subject; undefined where no trailer names one. */
export const infoOf = (context: PDFContext, text: string): PDFDict | undefined => {
  const named = context.lookup(context.trailerInfo.Info)
  if (named instanceof PDFDict) return named
  for (const words of saidOf(text, '/Info')) {
    const [, number, generation] = /^\s*(\d{1,7})\s+(\d{1,5})\s+R/.exec(words) ?? []
    const info = number && context.lookup(PDFRef.of(Number(number), Number(generation)))
    if (info instanceof PDFDict) return info
  }
  return undefined
}
