import type { Convex } from './clip.ts'

/** How deep two convex polygons reach into each other, mm: 0 or less when a line parts them (separating axis theorem). */
export const convexOverlap = (a: Convex, b: Convex): number =>
  Math.min(overlapAcross(a, b), overlapAcross(b, a))

/** Whether they do no deeper than so much, mm: quicker asked than how deep. */
export const convexApart = (a: Convex, b: Convex, most: number): boolean =>
  overlapAcross(a, b, most) <= most || overlapAcross(b, a, most) <= most

/** The least of it square to an edge of `a`, or what comes first of no more than `enough`. */
const overlapAcross = (a: Convex, b: Convex, enough = Number.NEGATIVE_INFINITY): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < a.length; i++) {
    const from = a[i]!
    const to = a[i + 1 === a.length ? 0 : i + 1]!
    const x = to.x - from.x
    const y = to.y - from.y
    const size = Math.hypot(x, y)
    if (size === 0) continue
    const own = reach(a, -y, x)
    const other = reach(b, -y, x)
    least = Math.min(least, own.high / size - other.low / size, other.high / size - own.low / size)
    if (least <= enough) return least
  }
  return least
}

/** Where a polygon begins and ends along a direction, times the direction's length. */
const reach = (polygon: Convex, x: number, y: number): { readonly low: number; readonly high: number } => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!
    const along = p.x * x + p.y * y
    if (along < low) low = along
    if (along > high) high = along
  }
  return { low, high }
}
