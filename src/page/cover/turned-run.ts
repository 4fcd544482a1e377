import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'

/** A broken line in the frame of a lattice, so kept that a page's edge finds where it is crossed without a look at every point. */
export interface TurnedRun {
  /** x and y by turns */
  readonly points: Float64Array
  /** the way along it up to each point, mm */
  readonly along: Float64Array
  /** numbers of the first point, of those where it turns back across or up, and of the last */
  readonly turns: readonly number[]
  readonly box: Box
}

/** Points in the frame of a lattice at an angle, x and y by turns. */
export const turnPoints = (points: readonly Point[], angle: number): Float64Array => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  const turned = new Float64Array(2 * points.length)
  for (let i = 0; i < points.length; i++) {
    const { x, y } = points[i]!
    turned[2 * i] = x * cos + y * sin
    turned[2 * i + 1] = y * cos - x * sin
  }
  return turned
}

/** What bounds points in the frame of a lattice at an angle. */
export const turnedBounds = (points: readonly Point[], angle: number): Box => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (const p of points) {
    const x = p.x * cos + p.y * sin
    const y = p.y * cos - p.x * sin
    if (x < x0) x0 = x
    if (x > x1) x1 = x
    if (y < y0) y0 = y
    if (y > y1) y1 = y
  }
  return { x0, y0, x1, y1 }
}

/**
 * The same for a convex outline, counter-clockwise, at angles that grow, by less than half a turn each: each of the four points
 * that reach farthest only moves on along it.
 */
export const hullBounds = (hull: readonly Point[], angles: readonly number[]): readonly Box[] => {
  const points = turnPoints(hull, 0)
  let [right, up, left, down] = [0, 0, 0, 0]
  return angles.map((angle, i) => {
    const cos = Math.cos(angle)
    const sin = Math.sin(angle)
    // at the first angle they may lie anywhere
    const least = i === 0 ? hull.length : 1
    right = farthestOn(points, right, least, cos, sin)
    up = farthestOn(points, up, least, -sin, cos)
    left = farthestOn(points, left, least, -cos, -sin)
    down = farthestOn(points, down, least, sin, -cos)
    return {
      x0: -reachOf(points, left, -cos, -sin),
      y0: -reachOf(points, down, sin, -cos),
      x1: reachOf(points, right, cos, sin),
      y1: reachOf(points, up, -sin, cos),
    }
  })
}

const reachOf = (points: Float64Array, at: number, ux: number, uy: number): number =>
  points[2 * at]! * ux + points[2 * at + 1]! * uy

/** Of points, x and y by turns, the one that reaches farthest in a direction: from one on, past `least` of them and as long as they reach farther. */
const farthestOn = (points: Float64Array, from: number, least: number, ux: number, uy: number): number => {
  const count = points.length / 2
  let farthest = from
  let best = reachOf(points, from, ux, uy)
  for (let n = 1, next = from + 1; ; n++, next++) {
    const at = next % count
    const reach = reachOf(points, at, ux, uy)
    if (reach > best) {
      best = reach
      farthest = at
    } else if (n >= least) return farthest
  }
}

export const turnRuns = (runs: readonly (readonly Point[])[], angle: number): readonly TurnedRun[] =>
  runs.map((run) => turnedRun(turnPoints(run, angle)))

export const turnedRun = (points: Float64Array): TurnedRun => {
  const count = points.length / 2
  const along = new Float64Array(count)
  const turns = [0]
  let right = 0
  let up = 0
  for (let i = 1; i < count; i++) {
    const dx = points[2 * i]! - points[2 * i - 2]!
    const dy = points[2 * i + 1]! - points[2 * i - 1]!
    along[i] = along[i - 1]! + Math.sqrt(dx * dx + dy * dy)
    if (dx * right < 0 || dy * up < 0) {
      turns.push(i - 1)
      right = 0
      up = 0
    }
    if (dx !== 0) right = dx
    if (dy !== 0) up = dy
  }
  turns.push(count - 1)
  // between two turns it goes one way across and one way up
  let x0 = points[0]!
  let y0 = points[1]!
  let x1 = x0
  let y1 = y0
  for (let k = 1; k < turns.length; k++) {
    const x = points[2 * turns[k]!]!
    const y = points[2 * turns[k]! + 1]!
    if (x < x0) x0 = x
    if (x > x1) x1 = x
    if (y < y0) y0 = y
    if (y > y1) y1 = y
  }
  return { points, along, turns, box: { x0, y0, x1, y1 } }
}

/**
 * Of a stretch that does not turn back, from one point to another, the first point that lies beyond a joint line; the one after the
 * last where none does. `axis`: 0 for x, 1 for y; `way`: 1 where it rises, −1 where it falls; `cell`: which it leaves.
 */
export const firstBeyond = (
  points: Float64Array,
  axis: 0 | 1,
  from: number,
  to: number,
  way: 1 | -1,
  cell: number,
  start: number,
  pitch: number,
): number => {
  let inside = from
  let beyond = to + 1
  while (beyond - inside > 1) {
    const middle = (inside + beyond) >> 1
    const at = Math.floor((points[2 * middle + axis]! - start) / pitch)
    if (way > 0 ? at > cell : at < cell) beyond = middle
    else inside = middle
  }
  return beyond
}
