import { type PDFContext, PDFHexString, type PDFRef } from 'pdf-lib'
import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'
import { textString } from './pdf-string.ts'

/** The byte string that old readers show: what is not plain ASCII becomes `_`. */
const plainName = (name: string): PDFHexString =>
  PDFHexString.of(
    [...name]
      .map((letter) => (/[ -~]/.test(letter) ? letter : '_').charCodeAt(0).toString(16).padStart(2, '0'))
      .join(''),
  )

const fileSpec = (context: PDFContext, file: PdfAttachment, deflate: PdfPlatform['deflate']): PDFRef => {
  const data = context.register(
    context.stream(deflate(file.bytes), {
      Type: 'EmbeddedFile',
      Subtype: file.type,
      Filter: 'FlateDecode',
      Params: { Size: file.bytes.length },
    }),
  )
  return context.register(
    context.obj({
      Type: 'Filespec',
      F: plainName(file.name),
      UF: textString(file.name),
      Desc: textString(file.description),
      AFRelationship: 'Data',
      EF: { F: data, UF: data },
    }),
  )
}

/** Attached files with the relationship Data. Throws RangeError on two of one name. */
export const createAttachments = (
  context: PDFContext,
  files: readonly PdfAttachment[],
  deflate: PdfPlatform['deflate'],
): { readonly names: PDFRef; readonly specs: readonly PDFRef[] } | undefined => {
  if (files.length === 0) return undefined
  // a name tree is sorted by its keys' bytes: the order of UTF-16 units
  const sorted = [...files].sort((a, b) => (a.name < b.name ? -1 : 1))
  sorted.forEach((file, i) => {
    if (i > 0 && sorted[i - 1]!.name === file.name)
      throw new RangeError(`two attachments are named “${file.name}”`)
  })
  const specs = sorted.map((file) => fileSpec(context, file, deflate))
  const names = context.register(
    context.obj({ Names: sorted.flatMap((file, i) => [textString(file.name), specs[i]!]) }),
  )
  return { names, specs }
}
