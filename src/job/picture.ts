import type { Picture, PictureRoom } from '../booklet/views/side-picture.ts'
import type { PaperName } from '../design/design.ts'
import { group } from '../drawing/drawing.ts'
import { affineTranslate } from '../geometry/affine.ts'
import { defaultMargins, paperOf } from '../page/sheet/paper.ts'
import type { PdfInput } from '../write/pdf-input.ts'

/** As many dots as a screen shows well, for one mm of a picture. */
export const pictureDots = 8

/** A map is as many dots wide as most phones show. */
export const phoneDots = 1080

/** What a picture may take of a paper, mm. */
export const pictureRoom = (paper: PaperName): PictureRoom => {
  const { width, height } = paperOf(paper)
  const { left, right, top, bottom } = defaultMargins(paper)
  return { width: width - left - right, height: height - top - bottom }
}

/** A picture on a page of the paper, to scale. */
export const pictureInput = ({ drawing, height }: Picture, title: string, paper: PaperName): PdfInput => {
  const sheet = paperOf(paper)
  const { left, top } = defaultMargins(paper)
  const draw = () => [group(affineTranslate(left, sheet.height - top - height), drawing)]
  const pages = [{ width: sheet.width, height: sheet.height, draw, label: '1', bookmark: title }]
  return { title, subject: 'A ramp from the side', pages, attachments: [] }
}
