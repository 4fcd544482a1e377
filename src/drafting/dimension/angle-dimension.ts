import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { arcSegment, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'

export interface AngleDimension {
  readonly vertex: Point
  /** directions of the two legs, radians; the arc runs counter-clockwise from the first to the second */
  readonly from: number
  readonly to: number
  /** of the arc on paper, mm */
  readonly radius: number
  readonly figure: string
}

/** An arc with a head at each end where it is long enough, the figure level beyond its middle. */
export const angleDimension = (
  { vertex, from, to, radius, figure }: AngleDimension,
  { layer, size, lines }: DraftStyle,
): Drawing => {
  const sweep = to - from
  const head = size
  const middle = from + sweep / 2
  // the figure's box touches the arc's outside with half a height of air
  const half = textWidth(figure, size, 'regular') / 2
  const away =
    radius + 0.5 * size + Math.abs(Math.cos(middle)) * half + (Math.abs(Math.sin(middle)) * size) / 2
  const at = pointToward(vertex, middle, away)
  // a head follows the arc: its chord is turned by half its own angle
  const turn = head / radius / 2
  return [
    stroke(layer, segmentsPath([arcSegment(vertex, radius, from, sweep)]), lines.thin),
    ...(radius * sweep >= 2.5 * head
      ? [
          ...arrowHead(layer, pointToward(vertex, from, radius), from - Math.PI / 2 + turn, head),
          ...arrowHead(layer, pointToward(vertex, to, radius), to + Math.PI / 2 - turn, head),
        ]
      : []),
    text(layer, { x: at.x, y: at.y - size / 2 }, size, figure, { align: 'middle' }),
  ]
}
