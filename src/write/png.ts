import type { Drawing } from '../drawing/drawing.ts'
import { type RasterImage, type RasterSize, rasterise } from './raster/raster.ts'
import type { GlyphSource } from './raster/raster-text.ts'

/** What the platform hands in: a font, and the codec for a grey picture. */
export interface PngPlatform {
  readonly glyphOf: GlyphSource
  readonly encode: (image: RasterImage) => Uint8Array
}

/** A drawing as the bytes of a PNG. Same input, same bytes. */
export const writePng = (drawing: Drawing, size: RasterSize, { glyphOf, encode }: PngPlatform): Uint8Array =>
  encode(rasterise(drawing, size, glyphOf))
