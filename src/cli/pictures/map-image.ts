import { extname } from 'node:path'
import { inflateSync } from 'node:zlib'
import { PNG } from 'pngjs'
import { type PhoneMap, phoneMap } from '../../booklet/phone-map.ts'
import type { Units } from '../../design/design.ts'
import type { Face } from '../../drawing/drawing.ts'
import { phoneDots } from '../../job/picture.ts'
import type { PageSet } from '../../page/set/draft.ts'
import { writePng } from '../../write/png.ts'
import { glyphSource } from '../../write/raster/glyph-source.ts'
import type { RasterImage } from '../../write/raster/raster.ts'
import type { GlyphSource } from '../../write/raster/raster-text.ts'
import { programBytes } from '../../write/type/program-bytes.ts'
import { readSfnt } from '../../write/type/sfnt.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { readWideFont } from '../platform.ts'

/** Asked before the work is done. */
export const checkMapFile = (file: string, force: boolean, source: string): void => {
  if (extname(file).toLowerCase() !== '.png')
    throw new Failure(2, `--map ${file}: the map is an image; end its name in .png`)
  checkOut(file, force, source)
}

/** The map of a set as a grey PNG for the phone. */
export const writeMap = async (
  title: string,
  set: PageSet,
  units: Units,
  file: string,
  force: boolean,
): Promise<void> => {
  const map = phoneMap(title, set, units)
  await writeImage(map, phoneDots / map.width, file, force)
}

/** A drawing between 0,0 and width, height as a grey PNG. */
export const writeImage = async (
  { drawing, width, height }: PhoneMap,
  pixelsPerMm: number,
  file: string,
  force: boolean,
): Promise<void> =>
  writeOut(file, writePng(drawing, { width, height, pixelsPerMm }, { glyphOf: loadGlyphs(), encode }), force)

const encode = ({ width, height, pixels }: RasterImage): Uint8Array => {
  const image = new PNG({ width, height })
  image.data = Buffer.from(pixels)
  // each row as it differs from the one above: trying all ways for every row takes five times as long to save a twentieth
  return PNG.sync.write(image, {
    colorType: 0,
    inputColorType: 0,
    inputHasAlpha: false,
    bitDepth: 8,
    filterType: 2,
  })
}

/** Outlines of letters; the wide font is read when one asks for it. */
export const loadGlyphs = (): GlyphSource => {
  const face = (name: Face) => readSfnt(inflateSync(programBytes(name)))
  return glyphSource({ regular: face('regular'), bold: face('bold') }, () => {
    const { regular, bold } = readWideFont()
    return { regular: readSfnt(regular), bold: readSfnt(bold) }
  })
}
