import { formatNumber } from '../drawing/number.ts'
import { withoutProof } from '../drawing/page-proof.ts'
import { faceWords, rowTileWords, tileWords } from '../drawing/set-words.ts'
import { textWidth } from '../drawing/text-width.ts'
import type { Affine } from '../geometry/affine.ts'
import { latin1Of } from './latin1.ts'

export interface Recorrection {
  /** what was written to what is to be written, points of the page */
  readonly change: Affine
  /** set code as printed on the pages, and as it is now */
  readonly set: { readonly from: string; readonly to: string }
  /** whose correction the pages have now */
  readonly printer: string
}

export interface Recorrected {
  readonly content: Uint8Array
  /** the page tells the new set and printer alone; not so where words are set in the wide font */
  readonly told: boolean
}

/**
 * The operators of one of our pages for another correction: what they draw stays as it is, all of it under one matrix. Only the
 * words that tell set and printer are new.
 */
export const recorrect = (content: Uint8Array, { change, set, printer }: Recorrection): Recorrected => {
  const before = latin1Of(content)
  const after = tellPrinter(before.replaceAll(set.from, set.to), printer)
  const matrix = change.map((v, i) => formatNumber(v, i < 4 ? 12 : 8, 'the change of a page')).join(' ')
  return {
    content: bytesOf(`q\n${matrix} cm\n${after}Q\n`),
    told: withoutProof(before).includes(set.from),
  }
}

const bytesOf = (text: string): Uint8Array => {
  const bytes = new Uint8Array(text.length)
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i)
  return bytes
}

/** A text as it stands in a content stream; · is \267 in our own face. */
const written = (text: string): string => text.replaceAll('·', '\\267')

/** Stands for what differs from page to page while a form is made of words. */
const anything = '\0'

/** The form of written words; groups where they hold `anything`. */
const formOf = (words: string, held: string): string =>
  written(words)
    .replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')
    .replaceAll(anything, held)

/** Shown words, for no printer or for one, maybe squeezed. */
const shownForm = (words: (printer: string | null) => string): RegExp => {
  const [plain, corrected] = [formOf(words(null), ''), formOf(words(anything), '[\\w-]+')]
  return new RegExp(`(?:[\\d.]+ Tz )?\\((?:${plain}|${corrected})\\) Tj(?: 100 Tz)?`)
}

const outsideFace = shownForm(faceWords)
const tileLines = [tileWords(anything, anything), rowTileWords(anything, anything, anything)].map(
  (words) => new RegExp(`\\((${formOf(words, '[^()\\\\]+')})\\) Tj`),
)

const tellPrinter = (operators: string, printer: string): string => {
  const [, line] = tileLines.map((form) => form.exec(operators)).find((found) => found) ?? []
  // beside the small map there is room for the line above
  const beside =
    line === undefined ? Number.POSITIVE_INFINITY : textWidth(line.replaceAll('\\267', '·'), 1, 'regular')
  return operators.replace(outsideFace, () => shown(faceWords(printer), beside))
}

/** A text shown in our own face, squeezed where it is wider than `room` at a capital height of 1. */
const shown = (text: string, room: number): string => {
  const squeeze = Math.min(1, room / textWidth(text, 1, 'regular'))
  const show = `(${written(text)}) Tj`
  return squeeze < 1 ? `${formatNumber(squeeze * 100, 2, 'the squeeze of a text')} Tz ${show} 100 Tz` : show
}
