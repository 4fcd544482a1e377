import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'
import { figureLength, figureOver } from './figure.ts'

export interface RadiusDimension {
  readonly centre: Point
  readonly radius: number
  /** from the centre to where the head touches the curve, radians */
  readonly angle: number
  /** with its R */
  readonly figure: string
}

/** A line on the centre's side that points from the centre to the curve; where the centre lies far off only its end is drawn. */
export const radiusDimension = (
  { centre, radius, angle, figure }: RadiusDimension,
  style: DraftStyle,
): Drawing => {
  const { layer, size, lines } = style
  const tip = pointToward(centre, angle, radius)
  const head = 1.2 * size
  const length = Math.min(radius, figureLength(figure, size) + 2 * head)
  const start = pointToward(tip, angle, -length)
  return [
    stroke(layer, pathOf(start, tip), lines.thin),
    ...arrowHead(layer, tip, angle, head),
    figureOver(pointToward(tip, angle, -(length + head) / 2), angle, figure, style),
  ]
}
