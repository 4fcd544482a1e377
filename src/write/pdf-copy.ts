import { PDFArray, type PDFContext, PDFDict, PDFName, type PDFRef, PDFStream } from 'pdf-lib'
import { type DocumentPage, serializeDocument } from './pdf-document.ts'
import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'
import { createPdfObjects } from './pdf-objects.ts'
import { pdfTaker } from './pdf-taken.ts'

/** Some pages of a document that `writePdf` wrote, as a document of their own. */
export interface PdfCopy {
  /** the document that was read */
  readonly source: PDFContext
  readonly title: string
  readonly subject: string
  readonly pages: readonly CopiedPage[]
  readonly attachments: readonly PdfAttachment[]
}

export interface CopiedPage {
  /** the page's dictionary in the source: MediaBox and Resources of its own, one content stream */
  readonly page: PDFDict
  readonly label: string
  readonly bookmark: string
  /** what is drawn in place of the page's own content, not deflated yet */
  readonly content?: Uint8Array
}

/**
 * Content streams are copied as they are, byte for byte; layers and viewer preferences are kept. Same input, same bytes; a copy
 * of a copy has the bytes of the first.
 */
export const copyPdf = async (input: PdfCopy, platform: PdfPlatform): Promise<Uint8Array> => {
  const { source } = input
  const objects = createPdfObjects()
  // one for pages and catalog: both speak of the same layers
  const taken = pdfTaker(source, objects)
  const catalog = source.lookup(source.trailerInfo.Root, PDFDict)
  const tree = objects.nextRef()

  const copyPage = ({ page, label, bookmark, content }: CopiedPage): DocumentPage => {
    const packed = content && platform.deflate(content)
    const own = page.get(PDFName.of('Contents')) as PDFRef
    const Contents = packed ? objects.stream(packed, { Filter: 'FlateDecode' }) : taken(own)
    const box = page.lookup(PDFName.of('MediaBox'), PDFArray)
    const ref = objects.register({
      Type: 'Page',
      Parent: tree,
      MediaBox: taken(box),
      Resources: taken(page.get(PDFName.of('Resources'))!),
      Contents,
    })
    const { width, height } = box.asRectangle()
    return {
      ref,
      label,
      bookmark,
      size: [width, height],
      content: packed ?? source.lookup(own, PDFStream).getContents(),
    }
  }
  const pages = input.pages.map(copyPage)
  const kept = (key: string) => taken(catalog.get(PDFName.of(key))!)
  return serializeDocument(
    objects,
    {
      title: input.title,
      subject: input.subject,
      attachments: input.attachments,
      pages,
      tree,
      layers: kept('OCProperties'),
      viewerPreferences: kept('ViewerPreferences'),
    },
    platform,
  )
}
