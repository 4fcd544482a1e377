import type { Point } from './point.ts'

/** Whether the level line from a point to the right meets an edge. */
const meets = (a: Point, b: Point, p: Point): boolean =>
  a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)

/** Even–odd: whether a point lies within a polygon. */
export const polygonContains = (polygon: readonly Point[], p: Point): boolean => {
  let inside = false
  let a = polygon[polygon.length - 1]!
  for (const b of polygon) {
    if (meets(a, b, p)) inside = !inside
    a = b
  }
  return inside
}

/** The same, for many points between two heights: of a long outline few edges lie there. */
export const bandContains = (
  polygon: readonly Point[],
  low: number,
  high: number,
): ((p: Point) => boolean) => {
  const edges: (readonly [Point, Point])[] = []
  let a = polygon[polygon.length - 1]!
  for (const b of polygon) {
    if (Math.max(a.y, b.y) > low && Math.min(a.y, b.y) <= high) edges.push([a, b])
    a = b
  }
  return (p) => {
    if (p.y < low || p.y > high) return polygonContains(polygon, p)
    let inside = false
    for (const [from, to] of edges) if (meets(from, to, p)) inside = !inside
    return inside
  }
}
