import { createAttachments } from './pdf-attachments.ts'
import { concatenated, pdfFile } from './pdf-file.ts'
import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'
import { type PdfObjects, type PdfRef, type PdfValue, token } from './pdf-objects.ts'
import { createOutline } from './pdf-outline.ts'
import { textString } from './pdf-string.ts'

/** What a document says around its pages. */
export interface PdfDocument {
  readonly title: string
  readonly subject: string
  readonly attachments: readonly PdfAttachment[]
  readonly pages: readonly DocumentPage[]
  /** the node that the pages name as their parent */
  readonly tree: PdfRef
  /** optional content */
  readonly layers: PdfValue
  readonly viewerPreferences: PdfValue
}

export interface DocumentPage {
  readonly ref: PdfRef
  readonly label: string
  readonly bookmark: string
  /** [width, height], in any unit */
  readonly size: readonly number[]
  /** as it stands in the file */
  readonly content: Uint8Array
}

/** Everything that the document says, as bytes: what its /ID depends on. */
const fingerprintOf = ({ title, subject, pages, attachments }: PdfDocument): Uint8Array => {
  const words = JSON.stringify({
    title,
    subject,
    pages: pages.map((page) => [...page.size, page.label, page.bookmark, page.content.length]),
    attachments: attachments.map((file) => [file.name, file.type, file.description, file.bytes.length]),
  })
  const parts = [
    new TextEncoder().encode(words),
    ...pages.map((page) => page.content),
    ...attachments.map((file) => file.bytes),
  ]
  return concatenated(
    parts,
    parts.reduce((sum, part) => sum + part.length, 0),
  )
}

const hex = (bytes: Uint8Array): string => [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('')

/** Page tree, catalog, information and /ID around pages that `objects` hold already, and all of it as bytes. */
export const serializeDocument = (
  objects: PdfObjects,
  document: PdfDocument,
  platform: PdfPlatform,
): Uint8Array => {
  const { pages, tree } = document
  const refs = pages.map((page) => page.ref)
  objects.assign(tree, { Type: 'Pages', Kids: refs, Count: refs.length })
  const attachments = createAttachments(objects, document.attachments, platform.deflate)
  const outline = createOutline(
    objects,
    pages.map((page) => page.bookmark),
    refs,
  )
  const Root = objects.register({
    Type: 'Catalog',
    Pages: tree,
    Outlines: outline,
    PageLabels: { Nums: pages.flatMap((page, i) => [i, { P: textString(page.label) }]) },
    OCProperties: document.layers,
    ViewerPreferences: document.viewerPreferences,
    ...(attachments ? { Names: { EmbeddedFiles: attachments.names }, AF: attachments.specs } : {}),
  })
  const Info = objects.register({
    Title: textString(document.title),
    Subject: textString(document.subject),
    Creator: textString('traceply'),
    Producer: textString('traceply'),
  })
  const id = token(`<${hex(platform.digest(fingerprintOf(document)))}>`)
  return pdfFile(objects, { Root, Info, ID: [id, id] })
}
