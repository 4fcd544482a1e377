import type { Face, Mark } from '../../drawing/drawing.ts'
import { isCoded } from '../../drawing/letter-code.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Affine, affineRotate, affineThen, affineTranslate } from '../../geometry/affine.ts'
import type { Path } from '../../geometry/path.ts'
import { visualLetters } from '../type/visual-order.ts'
import { flattenPath } from './raster-flatten.ts'
import type { Polygon } from './raster-stroke.ts'

/** A letter's outline with its baseline start at 0,0; a capital is 1 high. Closed paths, filled by the non-zero rule. */
export interface Glyph {
  readonly advance: number
  readonly outlines: readonly Path[]
}

/** Every letter has a glyph, a box where no font has it; `own`: in the face of texts that it can print whole. */
export type GlyphSource = (letter: string, face: Face, own: boolean) => Glyph

/** The letters of a text, each as polygons in pixels, squeezed where they would outgrow the width that the layout reckoned with. */
export const textPolygons = (
  mark: Extract<Mark, { kind: 'text' }>,
  map: Affine,
  glyphOf: GlyphSource,
): readonly (readonly Polygon[])[] => {
  const words = mark.text.normalize('NFC')
  const own = isCoded(words)
  const glyphs = (own ? [...words] : visualLetters(words)).map((letter) => glyphOf(letter, mark.face, own))
  const natural = glyphs.reduce((sum, glyph) => sum + glyph.advance, 0) * mark.size
  const squeeze = natural > 0 ? Math.min(1, textWidth(words, mark.size, mark.face) / natural) : 1
  const width = natural * squeeze
  const back = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width
  const turned = affineThen(affineRotate(mark.angle), affineTranslate(mark.at.x, mark.at.y))
  let along = back
  return glyphs.map(({ advance, outlines }) => {
    const letter: Affine = [mark.size * squeeze, 0, 0, mark.size, along, 0]
    along += advance * mark.size * squeeze
    const placed = affineThen(affineThen(letter, turned), map)
    return outlines.map((path) => flattenPath(path, placed).points)
  })
}
