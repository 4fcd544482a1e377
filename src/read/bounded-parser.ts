import { PDFArray, PDFName, PDFNumber, type PDFObject, PDFParser, PDFRawStream } from 'pdf-lib'
import type { ReadPlatform } from './platform.ts'

/**
 * What a file may not hold more of: none that we wrote comes near it, and the parser would take minutes or all of the memory.
 * `packed`: bytes of all streams that hold objects, unpacked.
 */
const most = {
  objects: 3_000_000,
  packed: 16 * 1024 * 1024,
  entries: 1_000_000,
  width: 8,
  text: 1_000_000,
} as const

/** The parser opens streams that hold objects and cross-references without a bound: they are looked at before. */
export class BoundedParser extends PDFParser {
  /** it gave up since there was more of something than of ours */
  exceeded = false
  private objects = 0
  private packed = 0

  constructor(
    private readonly file: Uint8Array,
    private readonly platform: ReadPlatform,
  ) {
    super(file, Number.POSITIVE_INFINITY, true)
  }

  override parseObject(): PDFObject {
    this.hold(++this.objects <= most.objects)
    const object = super.parseObject()
    if (object instanceof PDFRawStream) this.checkStream(object)
    return object
  }

  protected override parseHexString(): ReturnType<PDFParser['parseHexString']> {
    const from = this.bytes.offset()
    this.hold(this.file.subarray(from, from + most.text + 2).includes(greater))
    return super.parseHexString()
  }

  protected override parseString(): ReturnType<PDFParser['parseString']> {
    this.hold(endsInTime(this.file, this.bytes.offset()))
    return super.parseString()
  }

  protected override parseName(): PDFName {
    const from = this.bytes.offset()
    // white space and what begins the next thing: all of it lies at or below these
    this.hold(
      this.file.subarray(from + 1, from + mostName).some((byte) => byte <= 0x20 || delimiters.has(byte)),
    )
    return super.parseName()
  }

  private checkStream({ dict, contents }: PDFRawStream): void {
    const type = dict.lookup(name('Type'))
    if (type !== name('ObjStm') && type !== name('XRef')) return
    const counts = ['N', 'Size', 'Index', 'W'].map((key) => numbersOf(dict.lookup(name(key))))
    this.hold(counts.flat().every((count) => count >= 0 && count <= most.entries))
    const [, , index, widths] = counts as [number[], number[], number[], number[]]
    this.hold(widths.every((width) => width <= most.width))
    this.hold(index.reduce((sum, length, i) => (i % 2 === 1 ? sum + length : sum), 0) <= most.entries)
    const filter = dict.lookup(name('Filter'))
    const [first, ...others] = filter instanceof PDFArray ? filter.asArray() : [filter]
    this.hold(others.length === 0 && (first === undefined || first === name('FlateDecode')))
    this.packed += first === undefined ? contents.length : this.inflated(contents)
    this.hold(this.packed <= most.packed)
  }

  private inflated(contents: Uint8Array): number {
    try {
      return this.platform.inflate(contents).length
    } catch {
      return this.hold(false)
    }
  }

  private hold(kept: false): never
  private hold(kept: boolean): void
  private hold(kept: boolean): void {
    if (kept) return
    this.exceeded = true
    throw new RangeError('more than any file of ours')
  }
}

const name = PDFName.of

const numbersOf = (value: PDFObject | undefined): readonly number[] =>
  value instanceof PDFNumber
    ? [value.asNumber()]
    : value instanceof PDFArray
      ? value.asArray().flatMap((_, i) => {
          const item = value.lookup(i)
          return item instanceof PDFNumber ? [item.asNumber()] : []
        })
      : []

const greater = 0x3e
const mostName = 1000
const delimiters: ReadonlySet<number> = new Set([...'()<>[]{}/%'].map((letter) => letter.charCodeAt(0)))

/** Whether a text in brackets ends before it is too long: it is read letter by letter. */
const endsInTime = (bytes: Uint8Array, from: number): boolean => {
  let depth = 0
  for (let at = from; at < Math.min(bytes.length, from + most.text + 2); at++) {
    const byte = bytes[at]
    if (byte === 0x5c) at++
    else if (byte === 0x28) depth++
    else if (byte === 0x29 && --depth === 0) return true
  }
  return false
}
