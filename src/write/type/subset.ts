import { glyphParts, isComposite } from './glyph-parts.ts'
import type { Sfnt } from './sfnt.ts'

export interface Subset {
  readonly bytes: Uint8Array
  /** new number of a glyph of the font */
  readonly numberOf: ReadonlyMap<number, number>
}

/**
 * A font of some glyphs as PDF readers take it (ISO 32000-1, 9.9): outlines and widths without hints, since those are for few
 * pixels. Glyph 0 stays, what a glyph is put together of comes along. `codes`: glyphs of one-byte codes, for a symbolic font.
 */
export const subsetFont = (
  font: Sfnt,
  glyphs: readonly number[],
  codes?: ReadonlyMap<number, number>,
): Subset => {
  const taken = withParts(font, [0, ...glyphs])
  const numberOf = new Map(taken.map((glyph, i) => [glyph, i]))
  const outlines = taken.map((glyph) => plainOutline(font.outline(glyph), numberOf))
  const starts = [0]
  for (const outline of outlines) starts.push(starts.at(-1)! + outline.length)
  const tables: [string, Uint8Array][] = [
    ...(codes ? [['cmap', codeTable(codes, numberOf)] as [string, Uint8Array]] : []),
    ['glyf', bytesOf(outlines.flatMap((outline) => [...outline]))],
    ['head', headTable(font)],
    ['hhea', hheaTable(font, taken)],
    ['hmtx', words(taken.flatMap((glyph) => [font.advance(glyph), font.leftBearing(glyph)]))],
    ['loca', words(starts.flatMap((at) => [at >>> 16, at]))],
    ['maxp', maxpTable(font, taken.length)],
  ]
  return { bytes: sfntFile(tables), numberOf }
}

const withParts = (font: Sfnt, glyphs: readonly number[]): readonly number[] => {
  const taken = new Set(glyphs)
  // what is added while the set is walked is walked too
  for (const glyph of taken) for (const part of glyphParts(font.outline(glyph))) taken.add(part.glyph)
  return [...taken]
}

const bytesOf = (list: readonly number[]): Uint8Array => Uint8Array.from(list)

/** 16-bit numbers, the high byte first. */
const words = (list: readonly number[]): Uint8Array =>
  bytesOf(list.flatMap((word) => [(word >> 8) & 255, word & 255]))

const copyOf = (view: DataView, from = 0, to = view.byteLength): Uint8Array =>
  new Uint8Array(view.buffer, view.byteOffset + from, to - from).slice()

/** An outline without hints, its parts by their new numbers, filled to four bytes. */
const plainOutline = (outline: DataView, numberOf: ReadonlyMap<number, number>): Uint8Array => {
  if (outline.byteLength === 0) return bytesOf([])
  const plain = isComposite(outline) ? compositeOutline(outline, numberOf) : simpleOutline(outline)
  return filled(plain)
}

const filled = (bytes: Uint8Array): Uint8Array => {
  const whole = new Uint8Array(4 * Math.ceil(bytes.length / 4))
  whole.set(bytes)
  return whole
}

const compositeOutline = (outline: DataView, numberOf: ReadonlyMap<number, number>): Uint8Array => {
  const parts = glyphParts(outline)
  const out = copyOf(outline, 0, parts.at(-1)!.end)
  const view = new DataView(out.buffer)
  for (const { at, flags, glyph } of parts) {
    // bit 8: hints follow
    view.setUint16(at, flags & ~0x100)
    view.setUint16(at + 2, numberOf.get(glyph)!)
  }
  return out
}

const simpleOutline = (outline: DataView): Uint8Array => {
  const ends = 10 + 2 * outline.getInt16(0)
  const hints = outline.getUint16(ends)
  const points = outline.getUint16(ends - 2) + 1
  const head = copyOf(outline, 0, ends)
  return bytesOf([
    ...head,
    0,
    0,
    ...copyOf(outline, ends + 2 + hints, simpleEnd(outline, ends + 2 + hints, points)),
  ])
}

/** Where flags and coordinates end: what follows is filling. */
const simpleEnd = (outline: DataView, start: number, points: number): number => {
  let [at, size] = [start, 0]
  for (let i = 0; i < points; ) {
    const flags = outline.getUint8(at++)
    const times = flags & 8 ? outline.getUint8(at++) + 1 : 1
    // x: bit 1 a byte, else bit 4 none; y: bit 2 a byte, else bit 5 none
    size += times * ((flags & 2 ? 1 : flags & 16 ? 0 : 2) + (flags & 4 ? 1 : flags & 32 ? 0 : 2))
    i += times
  }
  return at + size
}

/** Codes of one byte by the tables that readers try for a symbolic font: (1,0), and (3,0) from U+F000. */
const codeTable = (codes: ReadonlyMap<number, number>, numberOf: ReadonlyMap<number, number>): Uint8Array => {
  const glyphs = Array.from({ length: 256 }, (_, code) => numberOf.get(codes.get(code) ?? 0) ?? 0)
  const list = words([6, 10 + 512, 0, 0, 256, ...glyphs])
  const segments = [
    ...[4, 32 + 512, 0, 4, 4, 1, 0],
    ...[0xf0ff, 0xffff, 0, 0xf000, 0xffff, 0, 1, 4, 0],
    ...glyphs,
  ]
  return bytesOf([...words([0, 2, 1, 0, 0, 20, 3, 0, 0, 20 + list.length]), ...list, ...words(segments)])
}

const headTable = (font: Sfnt): Uint8Array =>
  words([
    ...[1, 0, 1, 0, 0, 0, 0x5f0f, 0x3cf5],
    ...[1, font.unitsPerEm],
    // no dates: same input, same bytes
    ...[0, 0, 0, 0, 0, 0, 0, 0],
    ...font.box,
    // no style, readable from 6 pixels on, left to right, long offsets
    ...[0, 6, 2, 1, 0],
  ])

const hheaTable = (font: Sfnt, glyphs: readonly number[]): Uint8Array =>
  words([
    ...[1, 0, font.ascent, font.descent, 0],
    Math.max(...glyphs.map(font.advance)),
    ...[0, 0, font.box[2], 1, 0, 0, 0, 0, 0, 0, 0],
    glyphs.length,
  ])

/** The font's own limits hold for some of its glyphs too; those of hints fall away. */
const maxpTable = (font: Sfnt, count: number): Uint8Array => {
  const out = copyOf(font.limits)
  const view = new DataView(out.buffer)
  view.setUint16(4, count)
  // one zone, no twilight points, storage, functions, instructions, stack, sizes
  view.setUint16(14, 1)
  for (let at = 16; at <= 26; at += 2) view.setUint16(at, 0)
  return out
}

const checksum = (bytes: Uint8Array): number => {
  const view = new DataView(bytes.buffer, bytes.byteOffset)
  let sum = 0
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0
  return sum
}

const sfntFile = (tables: readonly (readonly [string, Uint8Array])[]): Uint8Array => {
  const count = tables.length
  const power = 2 ** Math.floor(Math.log2(count))
  const long = (value: number): readonly number[] =>
    [value >>> 24, value >>> 16, value >>> 8, value].map((v) => v & 255)
  let at = 12 + 16 * count
  const directory = [...words([1, 0, count, 16 * power, Math.log2(power), 16 * (count - power)])]
  const body: number[] = []
  let head = 0
  for (const [tag, bytes] of tables) {
    if (tag === 'head') head = at
    const whole = filled(bytes)
    directory.push(...[...tag].map((letter) => letter.charCodeAt(0)))
    directory.push(...long(checksum(whole)), ...long(at), ...long(bytes.length))
    body.push(...whole)
    at += whole.length
  }
  const file = bytesOf([...directory, ...body])
  new DataView(file.buffer).setUint32(head + 8, (0xb1b0afba - checksum(file)) >>> 0)
  return file
}
