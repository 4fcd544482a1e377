import { PDFArray, PDFContext, PDFDict, PDFName, PDFObjectCopier, type PDFRef, PDFStream } from 'pdf-lib'
import { type DocumentPage, serializeDocument } from './pdf-document.ts'
import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'

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
  const context = PDFContext.create()
  // one copier for pages and catalog: both speak of the same layers
  const copier = PDFObjectCopier.for(source, context)
  const catalog = source.lookup(source.trailerInfo.Root, PDFDict)
  const tree = context.nextRef()

  const copyPage = ({ page, label, bookmark, content }: CopiedPage): DocumentPage => {
    const contents = content
      ? context.register(context.stream(platform.deflate(content), { Filter: 'FlateDecode' }))
      : copier.copy(page.get(PDFName.of('Contents')) as PDFRef)
    const box = page.lookup(PDFName.of('MediaBox'), PDFArray)
    const ref = context.register(
      context.obj({
        Type: 'Page',
        Parent: tree,
        MediaBox: copier.copy(box),
        Resources: copier.copy(page.get(PDFName.of('Resources'))!),
        Contents: contents,
      }),
    )
    const { width, height } = box.asRectangle()
    return {
      ref,
      label,
      bookmark,
      size: [width, height],
      content: context.lookup(contents, PDFStream).getContents(),
    }
  }
  const pages = input.pages.map(copyPage)
  const kept = (key: string) => copier.copy(catalog.get(PDFName.of(key))!)
  return serializeDocument(
    context,
    {
      title: input.title,
      subject: input.subject,
      attachments: input.attachments,
      pages,
      // they come with the resources of the pages
      shared: [],
      tree,
      layers: kept('OCProperties'),
      viewerPreferences: kept('ViewerPreferences'),
    },
    platform,
  )
}
