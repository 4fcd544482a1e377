import type { Sfnt } from './sfnt.ts'

/** The box round a glyph as the font says it: [x0, y0, x1, y1] in its units; none round a space. */
export const glyphBox = (
  font: Sfnt,
  glyph: number,
): readonly [number, number, number, number] | undefined => {
  const outline = font.outline(glyph)
  if (outline.byteLength === 0) return undefined
  return [outline.getInt16(2), outline.getInt16(4), outline.getInt16(6), outline.getInt16(8)]
}

/** Height of a capital per em: not every font states it, the H shows it. */
export const capitalOf = (font: Sfnt): number => {
  const box = glyphBox(font, font.glyphOf(72))
  if (!box) throw new Error('a font without an H')
  return box[3] / font.unitsPerEm
}
