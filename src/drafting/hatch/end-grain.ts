import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { type Convex, pathClip } from '../../geometry/clip.ts'
import { circle, pathOf } from '../../geometry/path.ts'
import { type Point, pointBetween, pointDistance } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'

/** Rings need so much room between them, mm; where fewer than three would show, two strokes corner to corner say sawn timber. */
const ringPitch = 1.1
const leastRings = 3

/** The end of a sawn timber: year rings about a heart below its wide face, or a cross where it is drawn small. Corners counter-clockwise. */
export const endGrain = (corners: Convex, { layer, lines }: DraftStyle): Drawing => {
  const [a, b, c, d] = corners as readonly [Point, Point, Point, Point]
  const short = Math.min(pointDistance(a, b), pointDistance(b, c))
  if (short < (leastRings + 1) * ringPitch)
    return [stroke(layer, pathOf(a, c), lines.thin), stroke(layer, pathOf(b, d), lines.thin)]
  // the heart lies a little outside the middle of a wide face
  const [p, q, r, s] = pointDistance(a, b) >= pointDistance(b, c) ? [a, b, c, d] : [b, c, d, a]
  const [face, back] = [pointBetween(p, q, 0.5), pointBetween(r, s, 0.5)]
  const heart = pointBetween(face, back, -0.15)
  const reach = Math.max(...corners.map((corner) => pointDistance(corner, heart)))
  const least = pointDistance(heart, face)
  const count = Math.floor((reach - least) / ringPitch)
  return Array.from({ length: count }, (_, i) => circle(heart, least + (i + 0.6) * ringPitch))
    .flatMap((ring) => pathClip(ring, corners))
    .map((path) => stroke(layer, path, lines.thin))
}
