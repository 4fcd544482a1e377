import type { Point } from './point.ts'

/** Even–odd: whether a point lies within a polygon. */
export const polygonContains = (polygon: readonly Point[], p: Point): boolean => {
  let inside = false
  let a = polygon[polygon.length - 1]!
  for (const b of polygon) {
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    a = b
  }
  return inside
}
