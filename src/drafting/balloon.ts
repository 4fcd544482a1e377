import { type Drawing, fill, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { circle } from '../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../geometry/point.ts'
import { leader } from './leader.ts'
import type { DraftStyle } from './line-types.ts'

/** Of the ring that holds a short name, mm. */
export const balloonRadius = (name: string, size: number): number =>
  Math.max(size, Math.hypot(textWidth(name, size, 'bold'), size) / 2 + 0.35 * size)

/** A short name in a ring, white inside, with a leader to what it names where `on` is said. */
export const balloon = (at: Point, name: string, style: DraftStyle, on?: Point): Drawing => {
  const { layer, size, lines } = style
  const radius = balloonRadius(name, size)
  const ring = circle(at, radius)
  return [
    ...(on && pointDistance(on, at) > radius
      ? leader(on, [pointToward(at, pointAngle(at, on), radius)], style)
      : []),
    fill(layer, ring, 1),
    stroke(layer, ring, lines.thin),
    text(layer, { x: at.x, y: at.y - size / 2 }, size, name, { face: 'bold', align: 'middle' }),
  ]
}
