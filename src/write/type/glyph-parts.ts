/** A glyph that is put together of others: where their numbers stand in its outline. */
export interface GlyphPart {
  readonly glyph: number
  /** bytes from the start of the outline to the part's flags; its number stands 2 further */
  readonly at: number
  readonly flags: number
  /** bytes from the start to what follows the part */
  readonly end: number
}

export const isComposite = (outline: DataView): boolean => outline.byteLength > 0 && outline.getInt16(0) < 0

/** OpenType 1.9, `glyf`: words instead of bytes, one scale, two, a matrix, more to come. */
const flag = { words: 1, scale: 8, more: 0x20, scales: 0x40, matrix: 0x80 } as const

/** The parts of a composite glyph, none of a plain one. */
export const glyphParts = (outline: DataView): readonly GlyphPart[] => {
  if (!isComposite(outline)) return []
  const parts: GlyphPart[] = []
  let at = 10
  for (;;) {
    const flags = outline.getUint16(at)
    const shift = flags & flag.words ? 4 : 2
    const turn = flags & flag.matrix ? 8 : flags & flag.scales ? 4 : flags & flag.scale ? 2 : 0
    const end = at + 4 + shift + turn
    parts.push({ glyph: outline.getUint16(at + 2), at, flags, end })
    if (!(flags & flag.more)) return parts
    at = end
  }
}

/** Where a part lies in the whole: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export const partMap = (
  outline: DataView,
  { at, flags }: GlyphPart,
): readonly [number, number, number, number, number, number] => {
  // bit 1: the two numbers are a shift; two points to be laid on each other are in no font that is used here
  if (!(flags & 2)) throw new Error('a glyph whose parts are joined at points')
  const words = flags & flag.words
  const [e, f] = words
    ? [outline.getInt16(at + 4), outline.getInt16(at + 6)]
    : [outline.getInt8(at + 4), outline.getInt8(at + 5)]
  const from = at + (words ? 8 : 6)
  const turn = (i: number): number => outline.getInt16(from + 2 * i) / 0x4000
  if (flags & flag.matrix) return [turn(0), turn(1), turn(2), turn(3), e, f]
  if (flags & flag.scales) return [turn(0), 0, 0, turn(1), e, f]
  return flags & flag.scale ? [turn(0), 0, 0, turn(0), e, f] : [1, 0, 0, 1, e, f]
}
