import { draftStyle } from '../../drafting/line-types.ts'
import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { rectangle } from '../../geometry/path.ts'

/** A piece on its board; mm from the board's squared end. */
export interface BoardCut {
  readonly from: number
  readonly length: number
  /** what may be written in it, the fullest first */
  readonly names: readonly string[]
}

const { lines } = draftStyle
/** Height of a bar, and of the words in it, mm. */
export const boardHeight = 7
const size = 2.6

/** A board as a bar with its pieces, to scale; what is left is grey. A box to tick in each piece. Lower left corner at zero. */
export const boardView = (
  {
    length,
    left,
    cuts,
  }: { readonly length: number; readonly left: number; readonly cuts: readonly BoardCut[] },
  ratio: number,
): Drawing => {
  // what is cut off to square the ends lies half at either
  const squared = length - left - cuts.reduce((end, cut) => Math.max(end, cut.from + cut.length), 0)
  const start = Math.max(0, Math.min(squared, length)) / 2
  const whole = rectangle(0, 0, length * ratio, boardHeight)
  return [
    fill('note', whole, 0.9),
    stroke('note', whole, lines.thin),
    ...cuts.flatMap(({ from, length: long, names }): Drawing => {
      const [x0, x1] = [(start + from) * ratio, (start + from + long) * ratio]
      const piece = rectangle(x0, 0, x1, boardHeight)
      const words = names.find((one) => textWidth(one, size, 'bold') <= x1 - x0 - 6) ?? ''
      return [
        fill('note', piece, 1),
        stroke('note', piece, lines.outline),
        stroke('note', rectangle(x0 + 1.5, 2, x0 + 1.5 + size, 2 + size), lines.thin),
        text('note', { x: x0 + 2.5 + size, y: 2.3 }, size, words, { face: 'bold' }),
      ]
    }),
  ]
}
