import type { Drawing, Face } from '../drawing/drawing.ts'
import type { PageProof } from '../drawing/page-proof.ts'

/** A document as the PDF writer takes it. */
export interface PdfInput {
  /** any language */
  readonly title: string
  readonly subject: string
  readonly pages: readonly PdfPage[]
  readonly attachments: readonly PdfAttachment[]
}

export interface PdfPage {
  /** mm */
  readonly width: number
  readonly height: number
  /** mm from the bottom left corner of the page, y up; asked for once, when the page is written */
  readonly draw: () => Drawing
  /** page label as viewers show it, such as `Map` or `3` */
  readonly label: string
  /** the entry in the document's outline */
  readonly bookmark: string
  /** for pages that are to be told from their content alone */
  readonly proof?: PageProof
}

export interface PdfAttachment {
  readonly name: string
  readonly type: string
  readonly description: string
  readonly bytes: Uint8Array
}

/** What the platform hands in. */
export interface PdfPlatform {
  /** zlib stream (RFC 1950) */
  readonly deflate: (bytes: Uint8Array) => Uint8Array
  /** any 16 bytes that depend on all of the input: the document's /ID */
  readonly digest: (bytes: Uint8Array) => Uint8Array
  /** a TrueType font for letters outside our own face; called only when a text needs it */
  readonly wideFont?: () => Promise<Readonly<Record<Face, Uint8Array>>>
}
