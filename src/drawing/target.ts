import { arcSegment, segmentsPath } from '../geometry/path.ts'
import { type Point, pointToward } from '../geometry/point.ts'
import { cross } from './cross.ts'
import { type Drawing, fill, type Layer, type Pen } from './drawing.ts'

/**
 * A cross with two opposite quarters of a disc filled, the general sign of a point that is set out: however it is turned, it looks like
 * no X. `arm`: half the length of its lines, `radius`: of the disc, mm.
 */
export const target = (
  layer: Layer,
  at: Point,
  arm: number,
  radius: number,
  pen: Pen,
  angle = 0,
): Drawing => [
  ...cross(layer, at, arm, pen, angle),
  ...[angle, angle + Math.PI].map((from) => {
    const [first, last] = [pointToward(at, from, radius), pointToward(at, from + Math.PI / 2, radius)]
    return fill(
      layer,
      segmentsPath([
        { kind: 'line', from: at, to: first },
        arcSegment(at, radius, from, Math.PI / 2),
        { kind: 'line', from: last, to: at },
      ]),
      0,
    )
  }),
]
