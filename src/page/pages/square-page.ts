import { type Drawing, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import { longRuler, rulerLength } from './square/long-ruler.ts'
import { type SquareSide, squareSides } from './square/square-inside.ts'
import { squareMarks } from './square/square-marks.ts'
import { rulerWords, type SquareFacts, squareWords } from './square/square-words.ts'

export interface SquarePage {
  readonly draw: () => Drawing
  /** lower left corner of the square on the page, ideal mm */
  readonly corner: Point
  readonly side: number
}

/** Room that rulers, words and the square's own distance from the edges take beside it, mm. */
const beside = { across: 32, down: 84 }

/** The rulers keep clear of the combs at the paper's edges; with their figures they take so much; and they end so far before the window or the words, mm. */
const rulerInset = 8
const rulerRoom = 16
const rulerEnd = 4

/** A length that takes as much room in words as any, mm. */
const asLong = 888.8

const smallest = squareSides[2]

/** Side of the square: smaller only where the page cannot hold the usual one; mm. */
export const squareSideIn = (window: Box): SquareSide =>
  squareSides.find(
    (side) => side + beside.across <= window.x1 - window.x0 && side + beside.down <= window.y1 - window.y0,
  ) ?? smallest

/** The page that proves the printer: a true square, two long rulers; ideal page mm. */
export const squarePage = (window: Box, facts: SquareFacts): SquarePage => {
  const { units } = facts
  const width = window.x1 - window.x0
  const side = squareSideIn(window)
  const across = rulerLength(width - rulerInset - rulerEnd, units)
  const words = squareWords(facts, side, width, across)
  let under = window.y1 - 2
  const told = words.over.map(([line, look]) => {
    const lines = paragraph({ x: window.x0, y: under }, line, look)
    under = lines.bottom
    return lines.marks
  })
  /** `down`: where the ruler down the page ends, mm */
  const ofRulers = (down: number) => rulerWords({ x: window.x0, y: under }, facts, side, width, across, down)
  // the ruler begins where the words end: they are laid with a length as long as its own first
  const { bottom: top } = ofRulers(asLong)
  const down = rulerLength(top - window.y0 - rulerInset - rulerEnd, units)
  const corner = {
    x: window.x0 + rulerInset + rulerRoom,
    y: Math.max(window.y0 + rulerInset + rulerRoom, (top + window.y0 + rulerRoom - side) / 2),
  }
  const zero = { x: window.x0 + rulerInset, y: window.y0 + rulerInset }
  return {
    corner,
    side,
    draw: () => [
      ...told.flat(),
      ...ofRulers(down).marks,
      ...squareMarks(corner, side, window.x1 - corner.x, words, facts),
      text('datum', { x: zero.x - 2.4, y: zero.y - 2.4 - letters.small }, letters.small, '0', {
        align: 'right',
      }),
      ...longRuler(zero, across, false, units),
      ...longRuler(zero, down, true, units),
    ],
  }
}
