import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import type { BoxCount } from './occupancy.ts'

/** Borders looked for round a block, and from place to place, mm. */
const border = { step: 6, most: 24 }
const step = 4

/**
 * Lower left corner for a block of a size inside `within`: where the widest empty border around it is free, else where it
 * covers least. Bottom left first among equals.
 */
export const freePlace = (
  count: BoxCount,
  width: number,
  height: number,
  within: Box,
): { readonly at: Point; readonly covered: number } | null => {
  const around = (x: number, y: number, by: number): number =>
    count(x - by, y - by, x + width + by, y + height + by)
  let best: { at: Point; covered: number; border: number } | undefined
  // a wider border than is known is asked for at once: where that is not free, no wider one is
  let wider = 0
  for (let y = within.y0; y + height <= within.y1; y += step)
    for (let x = within.x0; x + width <= within.x1; x += step) {
      if (wider > 0 && count(x - wider, y - wider, x + width + wider, y + height + wider) > 0) continue
      const covered = around(x, y, 0)
      if (best && covered > best.covered) continue
      let free = 0
      if (covered === 0)
        while (free < border.most && around(x, y, free + border.step) === 0) free += border.step
      if (!best || covered < best.covered || free > best.border) {
        best = { at: { x, y }, covered, border: free }
        wider = covered === 0 ? free + border.step : 0
      }
      // no border is wider
      if (free === border.most) return { at: best.at, covered }
    }
  return best ? { at: best.at, covered: best.covered } : null
}
