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
  // edges by the rows that they reach, row after row in one list: those of row n from starts[n] on
  const starts = new Int32Array(count + 1)
  const last = polygon.length - 1
  const rows = new Int32Array(polygon.length)
  for (let i = 0; i <= last; i++) rows[i] = Math.min(count - 1, Math.floor((polygon[i]!.y - low) * scale))
  for (let i = 0; i <= last; i++) {
    const a = rows[i === 0 ? last : i - 1]!
    const b = rows[i]!
    for (let row = Math.min(a, b), to = Math.max(a, b); row <= to; row++) starts[row + 1]!++
  }
  for (let row = 0; row < count; row++) starts[row + 1]! += starts[row]!
  const edges = new Int32Array(starts[count]!)
  const ends = starts.slice(0, count)
  for (let i = 0; i <= last; i++) {
    const a = rows[i === 0 ? last : i - 1]!
    const b = rows[i]!
    for (let row = Math.min(a, b), to = Math.max(a, b); row <= to; row++) edges[ends[row]!++] = i
  }
  return (p) => {
    if (p.y < low || p.y > high) return false
    let inside = false
    const row = Math.min(count - 1, Math.floor((p.y - low) * scale))
    for (let k = starts[row]!; k < starts[row + 1]!; k++) {
      const i = edges[k]!
      if (meets(polygon[i === 0 ? last : i - 1]!, polygon[i]!, p)) inside = !inside
    }
    return inside
  }
}
