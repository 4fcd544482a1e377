import type { Box } from '../../geometry/bounds.ts'

/** More boxes than this leave nothing worth a search. */
const mostBoxes = 100

/** The largest rectangle of a panel that no box meets, sides along the panel's own; null where none is left. */
export const largestRest = (panel: Box, boxes: readonly Box[], kerf: number): Box | null => {
  if (boxes.length > mostBoxes) return null
  const rising = boxes.toSorted((a, b) => a.y0 - b.y0)
  const lefts = [panel.x0, ...boxes.map(({ x1 }) => x1 + kerf)]
  const rights = [panel.x1, ...boxes.map(({ x0 }) => x0 - kerf)]
  let best: Box | null = null
  for (const x0 of lefts)
    for (const x1 of rights) {
      // no higher than the panel
      if (x1 <= x0 || (best && (x1 - x0) * (panel.y1 - panel.y0) <= areaOf(best))) continue
      const between = rising.filter((box) => box.x0 - kerf < x1 - 1e-6 && box.x1 + kerf > x0 + 1e-6)
      let free = panel.y0
      for (const { y0, y1 } of [...between, { y0: panel.y1 + kerf, y1: panel.y1 }]) {
        const top = Math.min(panel.y1, y0 - kerf)
        if (top > free && (!best || (x1 - x0) * (top - free) > areaOf(best) + 1e-3))
          best = { x0, y0: free, x1, y1: top }
        free = Math.max(free, y1 + kerf)
      }
    }
  return best
}

const areaOf = ({ x0, y0, x1, y1 }: Box): number => (x1 - x0) * (y1 - y0)
