import { arrowHead } from '../drawing/arrow.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { pathOf } from '../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../geometry/point.ts'
import type { DraftStyle } from './line-types.ts'

export interface SectionLine {
  readonly from: Point
  readonly to: Point
  /** which way one looks at the section: 1 to the left of the way from `from` to `to`, -1 to its right */
  readonly looks: 1 | -1
  readonly letter: string
  /** its ends alone, where the line would cross figures */
  readonly ends?: true
}

/** Where a section is taken: a chain line with wide ends, arrows the way one looks, the letter at both, upright. */
export const sectionLine = (
  { from, to, looks, letter, ends }: SectionLine,
  { layer, size, lines }: DraftStyle,
): Drawing => {
  const angle = pointAngle(from, to)
  const across = angle + (looks * Math.PI) / 2
  const end = Math.min(2 * size, pointDistance(from, to) / 3)
  const head = 1.1 * size
  const wide = { width: lines.outline.width }
  return [
    ...(ends
      ? []
      : [stroke(layer, pathOf(pointToward(from, angle, end), pointToward(to, angle, -end)), lines.axis)]),
    ...[
      { at: from, inward: angle },
      { at: to, inward: angle + Math.PI },
    ].flatMap(({ at, inward }): Drawing => {
      const tip = pointToward(at, across, 2.4 * size)
      // beyond the end of the line, beside the arrow
      const middle = pointToward(pointToward(at, across, 1.2 * size), inward, -1.5 * size)
      return [
        stroke(layer, pathOf(at, pointToward(at, inward, end)), wide),
        stroke(layer, pathOf(at, pointToward(tip, across, -head)), lines.thin),
        ...arrowHead(layer, tip, across, head),
        text(layer, { x: middle.x, y: middle.y - 0.6 * size }, 1.2 * size, letter, {
          face: 'bold',
          align: 'middle',
        }),
      ]
    }),
  ]
}
