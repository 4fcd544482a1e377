/** A TrueType font as its tables (OpenType 1.9, ISO/IEC 14496-22): what is needed to measure its letters and to take some of them. */
export interface Sfnt {
  readonly unitsPerEm: number
  /** box round all letters: [x0, y0, x1, y1] */
  readonly box: readonly [number, number, number, number]
  readonly ascent: number
  readonly descent: number
  /** glyph of a letter, or of a code in a font of one-byte codes; 0 where there is none */
  readonly glyphOf: (codePoint: number) => number
  readonly advance: (glyph: number) => number
  readonly leftBearing: (glyph: number) => number
  /** its outline as it stands in `glyf`; empty for a space */
  readonly outline: (glyph: number) => DataView
  /** `maxp` as it stands */
  readonly limits: DataView
}

/** Throws Error on what is no TrueType font with a table of Unicode letters. */
export const readSfnt = (bytes: Uint8Array): Sfnt => {
  const file = viewOf(bytes)
  const tables = new Map<string, DataView>()
  for (let i = 0; i < file.getUint16(4); i++) {
    const at = 12 + 16 * i
    const tag = String.fromCharCode(...bytes.subarray(at, at + 4))
    tables.set(tag, viewOf(bytes, file.getUint32(at + 8), file.getUint32(at + 12)))
  }
  const table = (tag: string): DataView => {
    const found = tables.get(tag)
    if (!found) throw new Error(`a font without the table ${tag}`)
    return found
  }
  const [head, hhea, hmtx, loca, glyf] = ['head', 'hhea', 'hmtx', 'loca', 'glyf'].map(table) as DataView[]
  const wide = head!.getInt16(50) === 1
  const offset = (glyph: number): number =>
    wide ? loca!.getUint32(4 * glyph) : 2 * loca!.getUint16(2 * glyph)
  // the last advance holds for all glyphs that follow
  const metrics = hhea!.getUint16(34)
  const box = [36, 38, 40, 42].map((at) => head!.getInt16(at))
  return {
    unitsPerEm: head!.getUint16(18),
    box: [box[0]!, box[1]!, box[2]!, box[3]!],
    ascent: hhea!.getInt16(4),
    descent: hhea!.getInt16(6),
    glyphOf: letterTable(table('cmap')),
    advance: (glyph) => hmtx!.getUint16(4 * Math.min(glyph, metrics - 1)),
    leftBearing: (glyph) =>
      hmtx!.getInt16(glyph < metrics ? 4 * glyph + 2 : 4 * metrics + 2 * (glyph - metrics)),
    outline: (glyph) => part(glyf!, offset(glyph), offset(glyph + 1) - offset(glyph)),
    limits: table('maxp'),
  }
}

const viewOf = (bytes: Uint8Array, at = 0, length = bytes.length - at): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset + at, length)

const part = (view: DataView, at: number, length: number): DataView =>
  new DataView(view.buffer, view.byteOffset + at, length)

/** Letters to glyphs, through the widest table of Unicode that the font has: format 12, else 4. Symbols stand from U+F000 on. */
const letterTable = (cmap: DataView): ((codePoint: number) => number) => {
  let best: { format: number; view: DataView } | undefined
  for (let i = 0; i < cmap.getUint16(2); i++) {
    const platform = cmap.getUint16(4 + 8 * i)
    const encoding = cmap.getUint16(6 + 8 * i)
    const at = cmap.getUint32(8 + 8 * i)
    const format = cmap.getUint16(at)
    if (platform === 3 && encoding === 0 && format === 4) {
      const view = part(cmap, at, cmap.byteLength - at)
      return (code) => inSegments(view, 0xf000 + code)
    }
    const unicode = platform === 0 || (platform === 3 && (encoding === 1 || encoding === 10))
    if (unicode && (format === 4 || format === 12) && format > (best?.format ?? 0))
      best = { format, view: part(cmap, at, cmap.byteLength - at) }
  }
  if (!best) throw new Error('a font without a table of Unicode letters')
  const { format, view } = best
  return format === 12 ? (code) => inGroups(view, code) : (code) => inSegments(view, code)
}

const inGroups = (view: DataView, code: number): number => {
  for (let i = 0; i < view.getUint32(12); i++) {
    const at = 16 + 12 * i
    if (code <= view.getUint32(at + 4))
      return code < view.getUint32(at) ? 0 : view.getUint32(at + 8) + code - view.getUint32(at)
  }
  return 0
}

const inSegments = (view: DataView, code: number): number => {
  const double = view.getUint16(6)
  const [ends, starts] = [14, 16 + double]
  for (let i = 0; i < double; i += 2) {
    if (code > view.getUint16(ends + i)) continue
    const start = view.getUint16(starts + i)
    if (code < start) return 0
    const delta = view.getUint16(starts + double + i)
    const range = view.getUint16(starts + 2 * double + i)
    if (range === 0) return (code + delta) & 0xffff
    const glyph = view.getUint16(starts + 2 * double + i + range + 2 * (code - start))
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff
  }
  return 0
}
