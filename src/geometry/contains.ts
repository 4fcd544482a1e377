import type { Point } from './point.ts'

/** Even–odd: whether a point lies within a polygon. */
export const polygonContains = (polygon: readonly Point[], p: Point): boolean => {
  let inside = false
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
  })
  return inside
}
