import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { pathOf, polygonOf } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { DraftStyle } from './line-types.ts'

export interface LevelMark {
  /** on the level that it gives: the triangle's tip */
  readonly at: Point
  readonly figure: string
  /** to which side the figure stands */
  readonly words: 'left' | 'right'
  /** triangle and figure hang under the line where something else stands over it */
  readonly hangs?: boolean
}

/** The drafting triangle with its tip on a short level line, the figure over the line beside it, or both under the line. */
export const levelMark = (
  { at, figure, words, hangs = false }: LevelMark,
  { layer, size, lines }: DraftStyle,
): Drawing => {
  const way = words === 'right' ? 1 : -1
  const up = hangs ? -1 : 1
  const [half, high] = [0.6 * size, up * size]
  const near = half + 0.4 * size
  const end = near + textWidth(figure, size, 'regular')
  return [
    stroke(
      layer,
      pathOf({ x: at.x - way * 1.2 * size, y: at.y }, { x: at.x + way * end, y: at.y }),
      lines.thin,
    ),
    stroke(
      layer,
      polygonOf(at, { x: at.x + half, y: at.y + high }, { x: at.x - half, y: at.y + high }),
      lines.thin,
    ),
    text(layer, { x: at.x + way * near, y: at.y + (hangs ? -1.85 : 0.35) * size }, size, figure, {
      align: words === 'right' ? 'left' : 'right',
    }),
  ]
}
