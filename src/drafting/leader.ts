import { type Drawing, fill, stroke } from '../drawing/drawing.ts'
import { circle, pathOf } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { DraftStyle } from './line-types.ts'

/** Radius of the dot that a leader of a size begins with. */
export const leaderDot = (size: number): number => 0.2 * size

/** A thin line that begins with a dot inside what it names, and runs on through further points. */
export const leader = (on: Point, through: readonly Point[], { layer, size, lines }: DraftStyle): Drawing => [
  fill(layer, circle(on, leaderDot(size)), 0),
  stroke(layer, pathOf(on, ...through), lines.thin),
]
