import type { Convex } from './clip.ts'
import { pointSubtract } from './point.ts'

/** How deep two convex polygons reach into each other, mm: 0 or less when a line parts them (separating axis theorem). */
export const convexOverlap = (a: Convex, b: Convex): number => {
  let least = Number.POSITIVE_INFINITY
  for (const polygon of [a, b])
    polygon.forEach((corner, i) => {
      const edge = pointSubtract(polygon[(i + 1) % polygon.length]!, corner)
      const size = Math.hypot(edge.x, edge.y)
      if (size === 0) return
      const along = (p: { readonly x: number; readonly y: number }): number =>
        (p.x * -edge.y + p.y * edge.x) / size
      const [as, bs] = [a.map(along), b.map(along)]
      least = Math.min(least, Math.max(...as) - Math.min(...bs), Math.max(...bs) - Math.min(...as))
    })
  return least
}
