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

/** The same, for many points: an edge is looked at only where it lies at their height. */
export const polygonInside = (polygon: readonly Point[]): ((p: Point) => boolean) => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { y } of polygon) {
    if (y < low) low = y
    if (y > high) high = y
  }
  const count = Math.max(1, polygon.length >> 1)
  const scale = high > low ? count / (high - low) : 0
  const rowOf = (y: number): number => Math.min(count - 1, Math.floor((y - low) * scale))
  const rows: (readonly [Point, Point])[][] = Array.from({ length: count }, () => [])
  let a = polygon[polygon.length - 1]!
  for (const b of polygon) {
    const [from, to] = [rowOf(Math.min(a.y, b.y)), rowOf(Math.max(a.y, b.y))]
    for (let row = from; row <= to; row++) rows[row]!.push([a, b])
    a = b
  }
  return (p) => {
    if (p.y < low || p.y > high) return false
    let inside = false
    for (const [from, to] of rows[rowOf(p.y)]!) if (meets(from, to, p)) inside = !inside
    return inside
  }
}
