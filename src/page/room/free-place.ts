import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import type { BoxCount } from './occupancy.ts'

/** Borders looked for round a block, and from place to place, mm. */
const border = { step: 6, most: 24 }
const step = 4

/**
 * Lower left corner for a block of a size inside `within` where nothing lies: where the widest empty border around it is, bottom left
 * first among equals; null where it has no place.
 */
export const freePlace = (count: BoxCount, width: number, height: number, within: Box): Point | null => {
  let best: Point | null = null
  // once a place is known a wider border is asked for at once: where that is not free, no wider one is
  let by = 0
  for (let y = within.y0; y + height <= within.y1; y += step) {
    let passed = Number.NEGATIVE_INFINITY
    for (let x = within.x0; x + width <= within.x1; x += step) {
      if (x <= passed) continue
      if (count(x - by, y - by, x + width + by, y + height + by) > 0) {
        passed = lastTaken(count, x - by, y - by, x + width + by, y + height + by) + by
        continue
      }
      let next = by + border.step
      while (next <= border.most && count(x - next, y - next, x + width + next, y + height + next) === 0)
        next += border.step
      best = { x, y }
      // no border is wider
      if (next > border.most) return best
      by = next
    }
  }
  return best
}

/** No box as wide, or wider, that begins no farther to the right than this leaves out the last that is taken of one. */
const lastTaken = (count: BoxCount, x0: number, y0: number, x1: number, y1: number): number => {
  let low = x0
  let high = x1
  while (high - low > step) {
    const middle = (low + high) / 2
    if (count(middle, y0, high, y1) > 0) low = middle
    else high = middle
  }
  return low - 1e-9
}

/** Lower left corner where a block covers least, and how much; bottom left first among equals, null where it has no place. */
export const leastPlace = (
  count: BoxCount,
  width: number,
  height: number,
  within: Box,
): { readonly at: Point; readonly covered: number } | null => {
  let at: Point | undefined
  let least = Number.POSITIVE_INFINITY
  for (let y = within.y0; y + height <= within.y1; y += step)
    for (let x = within.x0; x + width <= within.x1; x += step) {
      const covered = count(x, y, x + width, y + height)
      if (covered >= least) continue
      least = covered
      at = { x, y }
    }
  return at ? { at, covered: least } : null
}
