import { PDFArray, type PDFContext, PDFDict, PDFName, PDFRawStream, PDFRef } from 'pdf-lib'
import { layers } from '../drawing/drawing.ts'
import { readPageProof } from '../drawing/page-proof.ts'
import { type PlanPage, planName, type SetPlan } from '../drawing/set-plan.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import { BoundedParser } from './bounded-parser.ts'
import { latin1Of } from './latin1.ts'
import { pageOfWords } from './page-words.ts'
import { isBounded } from './pdf-bounds.ts'
import {
  attachedFile,
  bookmarks,
  isShallow,
  layerNames,
  pageLabels,
  pageRefs,
  textOf,
} from './pdf-catalog.ts'
import { infoOf, isLocked } from './pdf-trailer.ts'
import { isOlder, type PlanFault, readPlan } from './plan.ts'
import type { ReadPlatform } from './platform.ts'

/** A set, or a reprint of some of its pages, as its PDF holds it. */
export interface SetPdf {
  readonly context: PDFContext
  readonly plan: SetPlan
  readonly title: string
  readonly subject: string
  readonly attached: AttachedPlan
  /** those that prove which they are, in the order of the set, each once */
  readonly pages: readonly SetPdfPage[]
  /** some page cannot be opened */
  readonly damaged: boolean
}

export interface AttachedPlan {
  readonly name: string
  readonly type: string
  readonly description: string
}

export interface SetPdfPage {
  readonly planned: PlanPage
  /** MediaBox and Resources of its own, one content stream */
  readonly page: PDFDict
  readonly label: string
  readonly bookmark: string
}

/** Why a file is not taken. */
export type SetPdfFault =
  | { readonly kind: 'empty' }
  | { readonly kind: 'not-pdf' }
  /** its end is missing, or something within it was lost or altered */
  | { readonly kind: 'torn' }
  /** a PDF, but none of ours or no more: nothing is attached */
  | { readonly kind: 'no-plan' }
  /** our pages as another program wrote them anew; `lost` is what it left out */
  | { readonly kind: 'saved-anew'; readonly lost: string }
  /** it needs a password, or was locked */
  | { readonly kind: 'locked' }
  /** none of its pages proves which it is */
  | { readonly kind: 'unproven' }
  /** more than any set: so many objects, so long streams */
  | { readonly kind: 'unbounded' }
  | PlanFault

/** Opens a PDF that traceply wrote. Whatever is not whole is a fault, never a guess. */
export const readSetPdf = async (
  bytes: Uint8Array,
  platform: ReadPlatform,
): Promise<SetPdf | { readonly fault: SetPdfFault }> => {
  if (bytes.length === 0) return { fault: { kind: 'empty' } }
  if (ascii(bytes.subarray(0, 5)) !== '%PDF-') return { fault: { kind: 'not-pdf' } }
  if (!hasEnd(bytes)) return { fault: { kind: 'torn' } }
  const text = latin1Of(bytes)
  if (isLocked(text)) return { fault: { kind: 'locked' } }
  if (!isBounded(text)) return { fault: { kind: 'unbounded' } }
  const parser = new BoundedParser(bytes, platform)
  try {
    return readParsed(await parser.parseDocument(), text, platform)
  } catch {
    // the parser and the inflater throw as many kinds of errors as there are ways to damage a file
    return { fault: { kind: parser.exceeded ? 'unbounded' : 'torn' } }
  }
}

/** ISO 32000-1, 7.5.5: a file ends with the place of its cross-references, and they are there. */
const hasEnd = (bytes: Uint8Array): boolean => {
  const end = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(ascii(bytes.subarray(-64)))
  if (!end) return false
  const at = Number(end[1])
  return /^(\d+ \d+ obj|xref)/.test(ascii(bytes.subarray(at, at + 24)))
}

const ascii = (bytes: Uint8Array): string => String.fromCharCode(...bytes)

const readParsed = (
  context: PDFContext,
  text: string,
  platform: ReadPlatform,
): SetPdf | { readonly fault: SetPdfFault } => {
  const catalog = context.lookup(context.trailerInfo.Root, PDFDict)
  const file = attachedFile(catalog, planName)
  if (!file) return { fault: { kind: 'no-plan' } }
  const reading = readPlan(
    new TextDecoder('utf-8', { ignoreBOM: true }).decode(streamBytes(file.stream, platform)),
    platform.fingerprint,
  )
  if ('fault' in reading) return reading
  const { plan } = reading
  const lost = (what: string) => ({ fault: { kind: 'saved-anew', lost: what } }) as const
  for (const [key, what] of kept) if (!(catalog.lookup(PDFName.of(key)) instanceof PDFDict)) return lost(what)
  if (String(layerNames(catalog)) !== String([...layers].sort())) return lost('the layers')
  if (!tellsNotToScale(catalog)) return lost('the word to the printer not to scale')
  const refs = pageRefs(catalog)
  const labels = pageLabels(catalog)
  const marks = bookmarks(catalog)
  const found = new Map<number, SetPdfPage>()
  let [plain, damaged] = [0, false]
  for (const [i, ref] of refs.entries()) {
    const page = context.lookup(ref, PDFDict)
    if (!isPlain(page) || !isSized(page, plan)) continue
    plain++
    const planned = provenPage(page, plan, platform)
    damaged ||= planned === 'damaged'
    if (planned === null || planned === 'damaged' || found.has(planned.page)) continue
    const label = labels.get(i)
    const bookmark = marks.get(ref)
    if (label === undefined) return lost('the page labels')
    if (bookmark === undefined) return lost('the bookmarks')
    found.set(planned.page, { planned, page, label, bookmark })
  }
  if (plain === 0) return lost('the plain form of the pages')
  if (found.size === 0) return { fault: { kind: damaged ? 'torn' : 'unproven' } }
  const below = new Map<unknown, number>()
  if ([...found.values()].some(({ page }) => !isShallow(page, below))) return { fault: { kind: 'unbounded' } }
  const info = infoOf(context, text)
  if (!info) return lost('its title and subject')
  const { type, description } = file
  return {
    context,
    plan,
    title: textOf(info, 'Title'),
    subject: textOf(info, 'Subject'),
    attached: { name: planName, type, description },
    damaged,
    pages: [...found.values()].sort((a, b) => a.planned.page - b.planned.page),
  }
}

/** Entries of the catalog that a reprint keeps, and what they hold. */
const kept = [
  ['OCProperties', 'the layers'],
  ['ViewerPreferences', 'the word to the printer not to scale'],
  ['PageLabels', 'the page labels'],
  ['Outlines', 'the bookmarks'],
] as const

const tellsNotToScale = (catalog: PDFDict): boolean =>
  catalog.lookup(PDFName.of('ViewerPreferences'), PDFDict).lookup(PDFName.of('PrintScaling')) ===
  PDFName.of('None')

/** The page of the plan that a page proves to be; null where it is of another set, or says nothing. */
const provenPage = (page: PDFDict, plan: SetPlan, platform: ReadPlatform): PlanPage | 'damaged' | null => {
  try {
    const content = contentOf(page, platform)
    const proof = readPageProof(content)
    if (proof === null && isOlder(plan)) return pageOfWords(content, plan)
    return (proof?.set === plan.set && plan.pages[proof.page - 1]) || null
  } catch {
    return 'damaged'
  }
}

/** As `writePdf` makes pages: nothing inherited, one content stream. */
const isPlain = (page: PDFDict): boolean =>
  page.get(PDFName.of('MediaBox')) !== undefined &&
  page.get(PDFName.of('Resources')) !== undefined &&
  page.get(PDFName.of('Contents')) instanceof PDFRef &&
  page.lookup(PDFName.of('Contents')) instanceof PDFRawStream

/** The page is the paper of the plan, upright: a page of another size would print the lines at another scale. */
const isSized = (page: PDFDict, { paper }: SetPlan): boolean => {
  const { x, y, width, height } = page.lookup(PDFName.of('MediaBox'), PDFArray).asRectangle()
  const off = [x, y, width / pointsPerMm - paper.width, height / pointsPerMm - paper.height]
  return (
    off.every((v) => Math.abs(v) < 0.01) &&
    !page.has(PDFName.of('Rotate')) &&
    !page.has(PDFName.of('UserUnit'))
  )
}

/** What a page draws, as operators. Throws where its stream is damaged. */
export const pageContent = ({ page }: SetPdfPage, platform: ReadPlatform): Uint8Array =>
  contentOf(page, platform)

const contentOf = (page: PDFDict, platform: ReadPlatform): Uint8Array =>
  streamBytes(page.lookup(PDFName.of('Contents')) as PDFRawStream, platform)

const streamBytes = (stream: PDFRawStream, { inflate }: ReadPlatform): Uint8Array => {
  const filter = stream.dict.lookup(PDFName.of('Filter'))
  // another program may have unpacked it
  if (filter === undefined) return stream.contents
  if (filter !== PDFName.of('FlateDecode')) throw new RangeError('a stream that is not deflated as ours are')
  return inflate(stream.contents)
}
