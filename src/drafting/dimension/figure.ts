import { type Mark, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'

/** Of a figure over its line, and on either side of it, in heights of the figure. */
const over = 0.35
const beside = 0.6

/** The direction of a line (radians) such that words along it read from below, or from the right where it stands: -90° < angle ≤ 90°. */
export const readableAngle = (angle: number): number => {
  const half = angle - Math.PI * Math.floor(angle / Math.PI + 0.5)
  // what stands within a hair of upright reads from the right
  return half < -Math.PI / 2 + 1e-9 ? half + Math.PI : half
}

/** What a figure takes along its line, mm. */
export const figureLength = (words: string, size: number): number =>
  textWidth(words, size, 'regular') + 2 * beside * size

/** A figure over a line, parallel to it: `at` is on the line under the figure's middle. */
export const figureOver = (
  at: Point,
  angle: number,
  words: string,
  { layer, size }: DraftStyle,
): Extract<Mark, { kind: 'text' }> => {
  const turn = readableAngle(angle)
  return text(layer, pointToward(at, turn + Math.PI / 2, over * size), size, words, {
    angle: turn,
    align: 'middle',
  }) as Extract<Mark, { kind: 'text' }>
}
