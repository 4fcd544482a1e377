import { extname } from 'node:path'
import { sidePicture } from '../../booklet/views/side-picture.ts'
import type { Design } from '../../design/design.ts'
import { pictureDots, pictureInput, pictureRoom } from '../../job/picture.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import { writeSvg } from '../../write/svg.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { pdfOf } from '../pdf/write-pdf.ts'
import { writeImage } from './map-image.ts'

const pictureFormats = ['.png', '.svg', '.pdf'] as const

/** Asked before the work is done. */
export const checkPicture = (file: string, force: boolean, source: string): void => {
  const ending = extname(file).toLowerCase()
  if (!pictureFormats.some((format) => format === ending))
    throw new Failure(
      2,
      `--picture ${file}: the name says what is written; end it in ${pictureFormats.slice(0, -1).join(', ')} or ${pictureFormats.at(-1)}`,
    )
  checkOut(file, force, source)
}

/**
 * The ramp from the side as the ending of the name says: PNG and SVG as large as the picture, PDF on a page of the design's paper, to
 * scale. false where nothing is solved that could be drawn.
 */
export const writePicture = async (
  design: Design,
  solved: SolvedDesign,
  file: string,
  force: boolean,
): Promise<boolean> => {
  const { title, paper } = design
  const picture = sidePicture(design, solved, pictureRoom(paper))
  if (!picture) return false
  switch (extname(file).toLowerCase()) {
    case '.png':
      await writeImage(picture, pictureDots, file, force)
      break
    case '.svg':
      writeOut(file, writeSvg({ ...picture, title }), force)
      break
    default: {
      const { bytes } = await pdfOf(pictureInput(picture, title, paper))
      writeOut(file, bytes, force)
    }
  }
  return true
}
