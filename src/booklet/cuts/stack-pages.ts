import { type Drawing, group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'

/** Pages of one height, mm, one under the other from the top. */
export const stackPages = (pages: readonly Drawing[], height: number): Drawing =>
  pages.map((page, i) => group(affineTranslate(0, (pages.length - 1 - i) * height), page))
