import type { PdfAttachment, PdfPlatform } from './pdf-input.ts'
import { type PdfObjects, type PdfRef, type PdfToken, token } from './pdf-objects.ts'
import { textString } from './pdf-string.ts'

/** The byte string that old readers show: what is not plain ASCII becomes `_`. */
const plainName = (name: string): PdfToken =>
  token(
    `<${[...name]
      .map((letter) => (/[ -~]/.test(letter) ? letter : '_').charCodeAt(0).toString(16).padStart(2, '0'))
      .join('')}>`,
  )

const fileSpec = (objects: PdfObjects, file: PdfAttachment, deflate: PdfPlatform['deflate']): PdfRef => {
  const data = objects.stream(deflate(file.bytes), {
    Type: 'EmbeddedFile',
    Subtype: file.type,
    Filter: 'FlateDecode',
    Params: { Size: file.bytes.length },
  })
  return objects.register({
    Type: 'Filespec',
    F: plainName(file.name),
    UF: textString(file.name),
    Desc: textString(file.description),
    AFRelationship: 'Data',
    EF: { F: data, UF: data },
  })
}

/** Attached files with the relationship Data. Throws RangeError on two of one name. */
export const createAttachments = (
  objects: PdfObjects,
  files: readonly PdfAttachment[],
  deflate: PdfPlatform['deflate'],
): { readonly names: PdfRef; readonly specs: readonly PdfRef[] } | undefined => {
  if (files.length === 0) return undefined
  // a name tree is sorted by its keys' bytes: the order of UTF-16 units
  const sorted = [...files].sort((a, b) => (a.name < b.name ? -1 : 1))
  sorted.forEach((file, i) => {
    if (i > 0 && sorted[i - 1]!.name === file.name)
      throw new RangeError(`two attachments are named “${file.name}”`)
  })
  const specs = sorted.map((file) => fileSpec(objects, file, deflate))
  const names = objects.register({ Names: sorted.flatMap((file, i) => [textString(file.name), specs[i]!]) })
  return { names, specs }
}
