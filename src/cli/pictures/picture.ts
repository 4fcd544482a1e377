import { extname } from 'node:path'
import type { Picture } from '../../booklet/views/side-picture.ts'
import type { PaperName } from '../../design/design.ts'
import { pictureDots, pictureInput } from '../../job/picture.ts'
import { writeSvg } from '../../write/svg.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { pdfOf } from '../pdf/write-pdf.ts'
import { writeImage } from './map-image.ts'

export const pictureFormats = ['.png', '.svg', '.pdf'] as const

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

/** A picture as the ending of its name says: PNG and SVG as large as the picture, PDF on a page of the paper, to scale. */
export const writePicture = async (
  picture: Picture,
  title: string,
  paper: PaperName,
  file: string,
  force: boolean,
): Promise<void> => {
  switch (extname(file).toLowerCase()) {
    case '.png':
      return writeImage(picture, pictureDots, file, force)
    case '.svg':
      return writeOut(file, writeSvg({ ...picture, title }), force)
    default: {
      const { bytes } = await pdfOf(pictureInput(picture, title, paper))
      return writeOut(file, bytes, force)
    }
  }
}
