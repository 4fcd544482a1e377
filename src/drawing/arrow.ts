import { pathOf, polygonOf } from '../geometry/path.ts'
import { type Point, pointAngle, pointToward } from '../geometry/point.ts'
import { fill, type Layer, type Pen, type Shape, stroke } from './drawing.ts'

/** A filled head at `tip` that points in the direction of `angle` (radians), `size` mm long. */
export const arrowHead = (layer: Layer, tip: Point, angle: number, size: number): readonly Shape[] => [
  fill(
    layer,
    polygonOf(
      tip,
      pointToward(tip, angle + Math.PI - 0.32, size),
      pointToward(tip, angle + Math.PI + 0.32, size),
    ),
    0,
  ),
]

export const arrow = (layer: Layer, from: Point, to: Point, pen: Pen, size: number): readonly Shape[] => [
  stroke(layer, pathOf(from, to), pen),
  ...arrowHead(layer, to, pointAngle(from, to), size),
]
