import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { shortened } from '../drawing/shortened.ts'
import { textWidth } from '../drawing/text-width.ts'
import type { Box } from '../geometry/bounds.ts'
import { pathOf } from '../geometry/path.ts'
import type { DraftStyle } from './line-types.ts'

/** A field of the title block: what it is, small, and its value under it. */
export interface TitleField {
  readonly name: string
  readonly value: string
}

/** Height of a title block, mm, for figures so high. */
export const titleBlockHeight = (size: number): number => 3.9 * size

const nameSize = 0.87
const air = 0.8

/**
 * A strip along the foot of a page (ISO 7200, from memory: title, number, sheet n of N): a line above, fields side by side with
 * thin lines between. The first field takes the room that the others leave; its value is cut with … where that is too little.
 */
export const titleBlock = (box: Box, fields: readonly TitleField[], style: DraftStyle): Drawing => {
  const { layer, size, lines } = style
  const wide = fields.map(
    ({ name, value }) =>
      Math.max(textWidth(name, nameSize * size, 'regular'), textWidth(value, size, 'bold')) + 2 * air * size,
  )
  const others = wide.slice(1).reduce((sum, width) => sum + width, 0)
  const widths = [Math.max(0, box.x1 - box.x0 - others), ...wide.slice(1)]
  let left = box.x0
  return [
    stroke(layer, pathOf({ x: box.x0, y: box.y1 }, { x: box.x1, y: box.y1 }), lines.outline),
    ...fields.flatMap(({ name, value }, i): Drawing => {
      const x = left + (i === 0 ? 0 : air * size)
      const room = widths[i]! - (i === 0 ? air * size : 2 * air * size)
      const marks = [
        ...(i === 0
          ? []
          : [stroke(layer, pathOf({ x: left, y: box.y1 }, { x: left, y: box.y0 }), lines.thin)]),
        text(layer, { x, y: box.y1 - 1.5 * size }, nameSize * size, name),
        text(layer, { x, y: box.y1 - 3.1 * size }, size, shortened(value, size, room, 'bold'), {
          face: 'bold',
        }),
      ]
      left += widths[i]!
      return marks
    }),
  ]
}
