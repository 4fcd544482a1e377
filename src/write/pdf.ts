import { PDFContext, PDFHexString, type PDFRef, PDFStreamWriter } from 'pdf-lib'
import { formatNumber } from './number.ts'
import { createAttachments } from './pdf-attachments.ts'
import { pageContent } from './pdf-content.ts'
import { createFonts } from './pdf-fonts.ts'
import type { PdfInput, PdfPage, PdfPlatform } from './pdf-input.ts'
import { createLayers } from './pdf-layers.ts'
import { createOutline } from './pdf-outline.ts'
import { pointsPerMm } from './pdf-path.ts'
import { textString } from './pdf-string.ts'

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
const fingerprintOf = (input: PdfInput, contents: readonly Uint8Array[]): Uint8Array => {
  const { title, subject, pages, attachments } = input
  const words = JSON.stringify({
    title,
    subject,
    pages: pages.map((page, i) => [page.width, page.height, page.label, page.bookmark, contents[i]!.length]),
    attachments: attachments.map((file) => [file.name, file.type, file.description, file.bytes.length]),
  })
  return concatenate([new TextEncoder().encode(words), ...contents, ...attachments.map((file) => file.bytes)])
}

const hex = (bytes: Uint8Array): string => [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('')

/**
 * A document of upright pages in real size. Same input, same bytes: no dates, an /ID made of the content.
 * Throws RangeError on a landscape page and on a value that cannot be written (NaN, a pen of width 0), naming it.
 */
export const writePdf = async (input: PdfInput, platform: PdfPlatform): Promise<PdfOutput> => {
  const { pages } = input
  if (pages.length === 0) throw new RangeError('a document needs at least one page')
  const context = PDFContext.create()
  const fonts = await createFonts(
    pages.map((page) => page.drawing),
    platform,
  )
  const layers = createLayers(context)
  const [resources, tree] = [context.nextRef(), context.nextRef()]

  const encoder = new TextEncoder()
  const contents: Uint8Array[] = []
  const pageRefs = pages.map((page, i): PDFRef => {
    const bytes = platform.deflate(encoder.encode(pageContent(page, i + 1, fonts)))
    contents.push(bytes)
    return context.register(
      context.obj({
        Type: 'Page',
        Parent: tree,
        MediaBox: mediaBox(page, i + 1),
        Resources: resources,
        Contents: context.register(context.stream(bytes, { Filter: 'FlateDecode' })),
      }),
    )
  })
  context.assign(resources, context.obj({ Font: await fonts.embed(context), Properties: layers.groups }))
  context.assign(tree, context.obj({ Type: 'Pages', Kids: pageRefs, Count: pageRefs.length }))

  const attachments = createAttachments(context, input.attachments, platform.deflate)
  const outline = createOutline(
    context,
    pages.map((page) => page.bookmark),
    pageRefs,
  )
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Outlines: outline,
      PageLabels: { Nums: pages.flatMap((page, i) => [i, { P: textString(page.label) }]) },
      OCProperties: layers.properties,
      ViewerPreferences: {
        PrintScaling: 'None',
        Duplex: 'Simplex',
        PickTrayByPDFSize: true,
        DisplayDocTitle: true,
      },
      ...(attachments ? { Names: { EmbeddedFiles: attachments.names }, AF: [...attachments.specs] } : {}),
    }),
  )
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: textString(input.title),
      Subject: textString(input.subject),
      Creator: textString('traceply'),
      Producer: textString('traceply'),
    }),
  )
  const id = PDFHexString.of(hex(platform.digest(fingerprintOf(input, contents))))
  context.trailerInfo.ID = context.obj([id, id])
  // an endless tick: nothing else waits for this thread
  const bytes = await PDFStreamWriter.forContext(context, Number.POSITIVE_INFINITY).serializeToBuffer()
  return { bytes, warnings: fonts.warnings() }
}
