import type { Box } from '../../geometry/bounds.ts'
import type { Path } from '../../geometry/path.ts'
import { outerPolygon } from '../../geometry/polygon/outer-polygon.ts'

/** Enough that little is lost beside them. */
const count = 16

/** Of the straight lines that stand for arcs, which lie outside of these; mm. */
const tolerance = 0.1

/** Boxes from left to right that hold a curved piece, as high as it is within each. */
export const slicesOf = (outline: Path, { x0, x1 }: Box): readonly Box[] => {
  const corners = outerPolygon(outline, tolerance)
  return Array.from({ length: count }, (_, i): Box => {
    const [from, to] = [x0 + ((x1 - x0) * i) / count, x0 + ((x1 - x0) * (i + 1)) / count]
    const heights = corners.flatMap((a, k) => {
      const b = corners[(k + 1) % corners.length]!
      const [low, high] = a.x <= b.x ? [a, b] : [b, a]
      if (high.x < from || low.x > to) return []
      const slope = high.x - low.x < 1e-9 ? null : (high.y - low.y) / (high.x - low.x)
      // one that stands upright is in the slice with both its ends
      return slope === null
        ? [low.y, high.y]
        : [Math.max(from, low.x), Math.min(to, high.x)].map((x) => low.y + (x - low.x) * slope)
    })
    return { x0: from, x1: to, y0: Math.min(...heights), y1: Math.max(...heights) }
  })
}
