import {
  PDFArray,
  PDFBool,
  type PDFContext,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRef,
  PDFStream,
} from 'pdf-lib'
import { type PdfDict, type PdfObjects, type PdfRef, type PdfValue, token } from './pdf-objects.ts'

/** Takes what was read, and all that it names, over into another document: each object once, with a number of its own. */
export const pdfTaker = (source: PDFContext, objects: PdfObjects): ((object: PDFObject) => PdfValue) => {
  const known = new Map<PDFRef, PdfRef>()
  const dictOf = (dict: PDFDict): PdfDict =>
    Object.fromEntries(dict.entries().map(([key, value]) => [key.decodeText(), taken(value)]))
  const refOf = (from: PDFRef): PdfRef => {
    const before = known.get(from)
    if (before) return before
    const ref = objects.nextRef()
    known.set(from, ref)
    const named = source.lookup(from)
    if (named instanceof PDFStream) objects.assignStream(ref, named.getContents(), dictOf(named.dict))
    else if (named) objects.assign(ref, taken(named))
    return ref
  }
  const taken = (object: PDFObject): PdfValue => {
    if (object instanceof PDFDict) return dictOf(object)
    if (object instanceof PDFArray) return object.asArray().map(taken)
    if (object instanceof PDFRef) return refOf(object)
    if (object instanceof PDFName) return object.decodeText()
    if (object instanceof PDFNumber) return object.asNumber()
    if (object instanceof PDFBool) return object.asBoolean()
    // strings stand as they were read
    return token(object instanceof PDFHexString ? `<${object.asString()}>` : String(object))
  }
  return taken
}
