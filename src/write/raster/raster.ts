import { type Drawing, layers } from '../../drawing/drawing.ts'
import { above0 } from '../../drawing/number.ts'
import type { Affine } from '../../geometry/affine.ts'
import { marksByLayer } from '../placed.ts'
import { blankCanvas, fillPolygons } from './raster-fill.ts'
import { flattenPath } from './raster-flatten.ts'
import { strokePolygons } from './raster-stroke.ts'
import { type GlyphSource, textPolygons } from './raster-text.ts'

/** A grey picture, one byte a pixel, rows from the top: 0 black, 255 white. */
export interface RasterImage {
  readonly width: number
  readonly height: number
  readonly pixels: Uint8Array
}

/** What is drawn lies between 0,0 and width, height; mm, y up. */
export interface RasterSize {
  readonly width: number
  readonly height: number
  readonly pixelsPerMm: number
}

/** Larger ones are no picture for a phone, and fill its memory. */
const mostPixels = 40e6

/** A drawing as pixels, anti-aliased, black on white, layers in their order. Same input, same pixels. */
export const rasterise = (drawing: Drawing, size: RasterSize, glyphOf: GlyphSource): RasterImage => {
  const { pixelsPerMm } = size
  const [width, height] = [Math.round(size.width * pixelsPerMm), Math.round(size.height * pixelsPerMm)]
  if (!(width > 0 && height > 0 && width * height <= mostPixels))
    throw new RangeError(`a picture of ${width} x ${height} pixels cannot be drawn`)
  const canvas = blankCanvas(width, height)
  // y down from the top edge of the drawing
  const toPixels: Affine = [pixelsPerMm, 0, 0, -pixelsPerMm, 0, size.height * pixelsPerMm]
  const byLayer = marksByLayer(drawing, toPixels)
  for (const layer of layers)
    for (const { mark, map } of byLayer[layer])
      switch (mark.kind) {
        case 'stroke': {
          const { pen } = mark
          const dash = (pen.dash ?? []).map((mm) => above0(mm, 'a dash') * pixelsPerMm)
          const wide = above0(pen.width, 'a pen') * pixelsPerMm
          fillPolygons(canvas, strokePolygons(flattenPath(mark.path, map), wide, dash), pen.grey ?? 0)
          break
        }
        case 'fill':
          fillPolygons(canvas, [flattenPath(mark.path, map).points], mark.grey)
          break
        case 'text':
          // letter by letter: bands end at every corner of what is filled together
          for (const letter of textPolygons(mark, map, glyphOf)) fillPolygons(canvas, letter, mark.grey ?? 0)
          break
        default:
          mark satisfies never
      }
  const pixels = new Uint8Array(width * height)
  for (let i = 0; i < pixels.length; i++) pixels[i] = Math.round(canvas.grey[i]! * 255)
  return { width, height, pixels }
}
