import { PDFContext } from 'pdf-lib'
import { formatNumber } from '../drawing/number.ts'
import { pageProof } from '../drawing/page-proof.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import { createByteSink } from './byte-sink.ts'
import { writePageContent } from './pdf-content.ts'
import { type DocumentPage, serializeDocument } from './pdf-document.ts'
import { createFonts } from './pdf-fonts.ts'
import { createForms } from './pdf-forms.ts'
import type { PdfInput, PdfPage, PdfPlatform } from './pdf-input.ts'
import { createLayers } from './pdf-layers.ts'

export interface PdfOutput {
  readonly bytes: Uint8Array
  /** letters that could not be printed, in plain words */
  readonly warnings: readonly string[]
}

/** Page size in points, rounded as it is written. */
const mediaBox = (page: PdfPage, number: number): number[] => {
  const { width, height } = page
  if (!(width > 0 && height > 0)) throw new RangeError(`page ${number} is ${width} x ${height} mm`)
  if (width > height)
    throw new RangeError(
      `page ${number} is ${width} x ${height} mm: a page is upright, turn the drawing inside it`,
    )
  const size = (mm: number, name: string) =>
    Number(formatNumber(mm * pointsPerMm, 4, `${name} of page ${number}`))
  return [0, 0, size(width, 'width'), size(height, 'height')]
}

/**
 * A document of upright pages in real size. Same input, same bytes: no dates, an /ID made of the content.
 * Throws RangeError on a landscape page and on a value that cannot be written (NaN, a pen of width 0), naming it.
 */
export const writePdf = async (input: PdfInput, platform: PdfPlatform): Promise<PdfOutput> => {
  const { pages } = input
  if (pages.length === 0) throw new RangeError('a document needs at least one page')
  const context = PDFContext.create()
  const fonts = createFonts(platform)
  const forms = createForms(platform.deflate)
  const layers = createLayers(context)
  const [resources, tree] = [context.nextRef(), context.nextRef()]

  const sink = createByteSink()
  const written: DocumentPage[] = []
  for (const [i, page] of pages.entries()) {
    const drawing = page.draw()
    await fonts.prepare(drawing)
    if (page.proof) sink.words(pageProof(page.proof))
    writePageContent(sink, drawing, i + 1, { fonts, forms })
    const content = platform.deflate(sink.take())
    const ref = context.register(
      context.obj({
        Type: 'Page',
        Parent: tree,
        MediaBox: mediaBox(page, i + 1),
        Resources: resources,
        Contents: context.register(context.stream(content, { Filter: 'FlateDecode' })),
      }),
    )
    const { label, bookmark, width, height } = page
    written.push({ ref, label, bookmark, size: [width, height], content })
  }
  const XObject = forms.embed(context)
  context.assign(
    resources,
    context.obj({
      Font: fonts.embed(context),
      Properties: layers.groups,
      ...(Object.keys(XObject).length > 0 ? { XObject } : {}),
    }),
  )
  const bytes = await serializeDocument(
    context,
    {
      title: input.title,
      subject: input.subject,
      attachments: input.attachments,
      pages: written,
      shared: forms.contents(),
      tree,
      layers: layers.properties,
      viewerPreferences: context.obj({
        PrintScaling: 'None',
        Duplex: 'Simplex',
        PickTrayByPDFSize: true,
        DisplayDocTitle: true,
      }),
    },
    platform,
  )
  return { bytes, warnings: fonts.warnings() }
}
