import {
  type PdfDict,
  type PdfObjects,
  type PdfRef,
  type PdfStream,
  type PdfToken,
  valueText,
} from './pdf-objects.ts'

/** What the end of a file names. */
export interface PdfTrailer {
  readonly Root: PdfRef
  readonly Info: PdfRef
  readonly ID: readonly PdfToken[]
}

/** Objects that are no streams are kept so many together. */
const together = 50

/** [type, place or number of the stream that holds it, generation or place within that], ISO 32000-1, 7.5.8.3. */
type Entry = readonly [number: number, type: 0 | 1 | 2, where: number, more: number]

/**
 * PDF 1.7 with cross-references and small objects in streams (7.5.7, 7.5.8). Those are not packed: that costs more time than they
 * have bytes.
 */
export const pdfFile = (objects: PdfObjects, trailer: PdfTrailer): Uint8Array => {
  const all = objects.all()
  const parts: Uint8Array[] = [Uint8Array.of(...ascii('%PDF-1.7\n%'), 129, 129, 129, 129, 10, 10)]
  let size = parts[0]!.length
  const entries: Entry[] = [[0, 0, 0, 65535]]
  const put = (bytes: Uint8Array): void => {
    parts.push(bytes)
    size += bytes.length
  }
  const putStream = (number: number, { dict, bytes }: PdfStream, more: PdfDict = {}): void => {
    put(ascii(`${number} 0 obj\n${valueText({ ...dict, Length: bytes.length, ...more })}\nstream\n`))
    put(bytes)
    put(streamEnd)
  }
  const plain: (readonly [number: number, text: string])[] = []
  for (const [i, object] of all.entries()) {
    const number = i + 1
    if (object === undefined) continue
    if (typeof object === 'string') {
      entries.push([number, 2, all.length + 1 + Math.floor(plain.length / together), plain.length % together])
      plain.push([number, object])
    } else {
      entries.push([number, 1, size, 0])
      putStream(number, object)
    }
  }
  let last = all.length
  for (let first = 0; first < plain.length; first += together) {
    last++
    entries.push([last, 1, size, 0])
    putStream(last, objectStream(plain.slice(first, first + together)))
  }
  last++
  const end = size
  entries.push([last, 1, end, 0])
  const { bytes, W, Index } = crossReferences(entries)
  putStream(last, { dict: { Size: last + 1, ...trailer, Type: 'XRef' }, bytes }, { W, Index })
  put(ascii(`startxref\n${end}\n%%EOF`))
  return concatenated(parts, size)
}

/** Objects one after another, before them where each begins. */
const objectStream = (plain: readonly (readonly [number: number, text: string])[]): PdfStream => {
  let places = ''
  let words = ''
  for (const [number, text] of plain) {
    places += `${number} ${words.length} `
    words += `${text}\n`
  }
  return { dict: { Type: 'ObjStm', N: plain.length, First: places.length }, bytes: ascii(places + words) }
}

/** Bytes that hold a whole number. */
const bytesFor = (value: number): number => {
  let count = 1
  for (let rest = value; rest > 255; rest = Math.floor(rest / 256)) count++
  return count
}

const crossReferences = (entries: readonly Entry[]) => {
  const W = [1, 1, 1]
  const Index: number[] = []
  let before = Number.NEGATIVE_INFINITY
  for (const [number, ...fields] of entries) {
    if (number > before + 1) Index.push(number, 0)
    Index[Index.length - 1]!++
    before = number
    for (let k = 0; k < 3; k++) W[k] = Math.max(W[k]!, bytesFor(fields[k]!))
  }
  const bytes = new Uint8Array(entries.length * (W[0]! + W[1]! + W[2]!))
  let at = 0
  for (const [, ...fields] of entries)
    for (let k = 0; k < 3; k++)
      for (let byte = W[k]! - 1; byte >= 0; byte--) bytes[at++] = Math.floor(fields[k]! / 256 ** byte) % 256
  return { bytes, W, Index }
}

/** A byte a letter: what was read from another file may hold some beyond ASCII. */
const ascii = (text: string): Uint8Array =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII
  /^[\x00-\x7f]*$/.test(text)
    ? new TextEncoder().encode(text)
    : Uint8Array.from(text, (letter) => letter.charCodeAt(0))

const streamEnd = new TextEncoder().encode('\nendstream\nendobj\n\n')

export const concatenated = (parts: readonly Uint8Array[], size: number): Uint8Array => {
  const all = new Uint8Array(size)
  let offset = 0
  for (const part of parts) {
    all.set(part, offset)
    offset += part.length
  }
  return all
}
