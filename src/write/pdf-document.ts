import { type PDFContext, PDFHexString, type PDFObject, type PDFRef, PDFStreamWriter } from 'pdf-lib'
import { createAttachments } from './pdf-attachments.ts'
import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'
import { createOutline } from './pdf-outline.ts'
import { textString } from './pdf-string.ts'

/** What a document says around its pages. */
export interface PdfDocument {
  readonly title: string
  readonly subject: string
  readonly attachments: readonly PdfAttachment[]
  readonly pages: readonly DocumentPage[]
  /** what pages draw besides their own content, as it stands in the file */
  readonly shared: readonly Uint8Array[]
  /** the node that the pages name as their parent */
  readonly tree: PDFRef
  /** optional content */
  readonly layers: PDFObject
  readonly viewerPreferences: PDFObject
}

export interface DocumentPage {
  readonly ref: PDFRef
  readonly label: string
  readonly bookmark: string
  /** [width, height], in any unit */
  readonly size: readonly number[]
  /** as it stands in the file */
  readonly content: Uint8Array
}

const concatenate = (parts: readonly Uint8Array[]): Uint8Array => {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let offset = 0
  for (const part of parts) {
    all.set(part, offset)
    offset += part.length
  }
  return all
}

/** Everything that the document says, as bytes: what its /ID depends on. */
const fingerprintOf = ({ title, subject, pages, shared, attachments }: PdfDocument): Uint8Array => {
  const words = JSON.stringify({
    title,
    subject,
    pages: pages.map((page) => [...page.size, page.label, page.bookmark, page.content.length]),
    attachments: attachments.map((file) => [file.name, file.type, file.description, file.bytes.length]),
  })
  return concatenate([
    new TextEncoder().encode(words),
    ...pages.map((page) => page.content),
    ...shared,
    ...attachments.map((file) => file.bytes),
  ])
}

const hex = (bytes: Uint8Array): string => [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('')

/** Page tree, catalog, information and /ID around pages that the context holds already, and all of it as bytes. */
export const serializeDocument = async (
  context: PDFContext,
  document: PdfDocument,
  platform: PdfPlatform,
): Promise<Uint8Array> => {
  const { pages, tree } = document
  const refs = pages.map((page) => page.ref)
  context.assign(tree, context.obj({ Type: 'Pages', Kids: refs, Count: refs.length }))
  const attachments = createAttachments(context, document.attachments, platform.deflate)
  const outline = createOutline(
    context,
    pages.map((page) => page.bookmark),
    refs,
  )
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Outlines: outline,
      PageLabels: { Nums: pages.flatMap((page, i) => [i, { P: textString(page.label) }]) },
      OCProperties: document.layers,
      ViewerPreferences: document.viewerPreferences,
      ...(attachments ? { Names: { EmbeddedFiles: attachments.names }, AF: [...attachments.specs] } : {}),
    }),
  )
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: textString(document.title),
      Subject: textString(document.subject),
      Creator: textString('traceply'),
      Producer: textString('traceply'),
    }),
  )
  const id = PDFHexString.of(hex(platform.digest(fingerprintOf(document))))
  context.trailerInfo.ID = context.obj([id, id])
  // an endless tick: nothing else waits for this thread; object streams stay plain: packing them costs more time than they have bytes
  return PDFStreamWriter.forContext(context, Number.POSITIVE_INFINITY, false).serializeToBuffer()
}
