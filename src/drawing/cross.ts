import { pathOf } from '../geometry/path.ts'
import { type Point, pointToward } from '../geometry/point.ts'
import { type Drawing, type Layer, type Pen, stroke } from './drawing.ts'

/** Two lines of half length `arm` mm that cross square at a point; `angle` turns them (radians). */
export const cross = (layer: Layer, at: Point, arm: number, pen: Pen, angle = 0): Drawing =>
  [angle, angle + Math.PI / 2].map((a) =>
    stroke(layer, pathOf(pointToward(at, a, -arm), pointToward(at, a, arm)), pen),
  )
