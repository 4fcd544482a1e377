import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { circle, pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'

/** The end of a dimension line: a stroke across it at 45°, read along the line's direction (ISO 129-1, from memory). */
export const tick = (at: Point, angle: number, { layer, size, lines }: DraftStyle): Drawing => {
  const arm = 0.45 * size
  const lean = angle + Math.PI / 4
  return [
    stroke(layer, pathOf(pointToward(at, lean, -arm), pointToward(at, lean, arm)), {
      width: lines.outline.width,
    }),
  ]
}

/** The zero of running dimensions: a small open ring. */
export const zeroMark = (at: Point, { layer, size, lines }: DraftStyle): Drawing => [
  stroke(layer, circle(at, 0.4 * size), lines.thin),
]
