import { extname } from 'node:path'
import type { Picture } from '../../booklet/views/side-picture.ts'
import type { PaperName } from '../../design/design.ts'
import { group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { defaultMargins, paperOf } from '../../page/sheet/paper.ts'
import { writeSvg } from '../../write/svg.ts'
import { Failure } from '../failure.ts'
import { checkOut, writeOut } from '../files.ts'
import { pdfOf } from '../pdf/write-pdf.ts'
import { writeImage } from './map-image.ts'

export const pictureFormats = ['.png', '.svg', '.pdf'] as const

/** As many dots as a screen shows well, for one mm. */
const pixelsPerMm = 8

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

/** What a picture may take of a paper, mm. */
export const pictureRoom = (paper: PaperName): { readonly width: number; readonly height: number } => {
  const { width, height } = paperOf(paper)
  const { left, right, top, bottom } = defaultMargins(paper)
  return { width: width - left - right, height: height - top - bottom }
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
      return writeImage(picture, pixelsPerMm, file, force)
    case '.svg':
      return writeOut(file, writeSvg({ ...picture, title }), force)
    default: {
      const { width, height } = paperOf(paper)
      const { left, top } = defaultMargins(paper)
      const draw = () => [group(affineTranslate(left, height - top - picture.height), picture.drawing)]
      const pages = [{ width, height, draw, label: '1', bookmark: title }]
      const { bytes } = await pdfOf({ title, subject: 'A ramp from the side', pages, attachments: [] })
      return writeOut(file, bytes, force)
    }
  }
}
