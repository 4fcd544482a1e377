import { PDFArray, type PDFContext, PDFDict, PDFName, PDFParser, PDFRawStream, PDFRef } from 'pdf-lib'
import { type PlanPage, planName, type SetPlan } from '../drawing/set-plan.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import { attachedFile, bookmarks, pageLabels, pageRefs, textOf } from './pdf-catalog.ts'
import { type PlanFault, planHeld, readPlan } from './plan.ts'
import type { ReadPlatform } from './platform.ts'

/** A set, or a reprint of some of its pages, as its PDF holds it. */
export interface SetPdf {
  readonly context: PDFContext
  readonly plan: SetPlan
  readonly title: string
  readonly subject: string
  readonly attached: AttachedPlan
  /** in the file's order */
  readonly pages: readonly SetPdfPage[]
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
  | PlanFault

/** Opens a PDF that traceply wrote. Whatever is not whole is a fault, never a guess. */
export const readSetPdf = async (
  bytes: Uint8Array,
  platform: ReadPlatform,
): Promise<SetPdf | { readonly fault: SetPdfFault }> => {
  if (bytes.length === 0) return { fault: { kind: 'empty' } }
  if (ascii(bytes.subarray(0, 5)) !== '%PDF-') return { fault: { kind: 'not-pdf' } }
  if (!hasEnd(bytes)) return { fault: { kind: 'torn' } }
  try {
    const context = await PDFParser.forBytesWithOptions(bytes, Number.POSITIVE_INFINITY, true).parseDocument()
    return readParsed(context, platform)
  } catch {
    // the parser and the inflater throw as many kinds of errors as there are ways to damage a file
    return { fault: { kind: 'torn' } }
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
  const refs = pageRefs(catalog)
  const held = planHeld(plan)
  if (refs.length !== held.length) return lost('a page')
  const labels = pageLabels(catalog)
  const marks = bookmarks(catalog)
  const pages: SetPdfPage[] = []
  for (const [i, ref] of refs.entries()) {
    const page = context.lookup(ref, PDFDict)
    if (!isPlain(page) || !isSized(page, plan)) return lost('the plain form of the pages')
    const label = labels.get(i)
    const bookmark = marks.get(ref)
    if (label === undefined) return lost('the page labels')
    if (bookmark === undefined) return lost('the bookmarks')
    pages.push({ planned: plan.pages[held[i]! - 1]!, page, label, bookmark })
  }
  const info = context.lookup(context.trailerInfo.Info, PDFDict)
  const { type, description } = file
  return {
    context,
    plan,
    title: textOf(info, 'Title'),
    subject: textOf(info, 'Subject'),
    attached: { name: planName, type, description },
    pages,
  }
}

/** Entries of the catalog that a reprint keeps, and what they hold. */
const kept = [
  ['OCProperties', 'the layers'],
  ['ViewerPreferences', 'the word to the printer not to scale'],
  ['PageLabels', 'the page labels'],
  ['Outlines', 'the bookmarks'],
] as const

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
  streamBytes(page.lookup(PDFName.of('Contents')) as PDFRawStream, platform)

const streamBytes = (stream: PDFRawStream, { inflate }: ReadPlatform): Uint8Array => {
  if (stream.dict.lookup(PDFName.of('Filter')) !== PDFName.of('FlateDecode'))
    throw new RangeError('a stream that is not deflated as ours are')
  return inflate(stream.contents)
}
