import type { Convex } from '../clip.ts'
import { type Point, pointBetween, pointCross, pointSubtract } from '../point.ts'

/** What two convex polygons share; empty where they share no area. */
export const convexMeet = (a: Convex, b: Convex): Convex => {
  let kept: readonly Point[] = a
  b.forEach((from, i) => {
    const edge = pointSubtract(b[(i + 1) % b.length]!, from)
    const left = kept.map((p) => pointCross(edge, pointSubtract(p, from)))
    // most edges cut nothing off
    if (left.every((cross) => cross >= 0)) return
    kept = kept.flatMap((p, k) => {
      const next = (k + 1) % kept.length
      const [here, there] = [left[k]!, left[next]!]
      const crossed = here * there < 0 ? [pointBetween(p, kept[next]!, here / (here - there))] : []
      return here >= 0 ? [p, ...crossed] : crossed
    })
  })
  return kept.length > 2 ? kept : []
}

/** The least distance of two parallel lines that hold a convex polygon between them, mm; 0 for none. */
export const convexWidth = (polygon: Convex): number =>
  polygon.length < 3
    ? 0
    : Math.min(
        ...polygon.map((from, i) => {
          const edge = pointSubtract(polygon[(i + 1) % polygon.length]!, from)
          const size = Math.hypot(edge.x, edge.y)
          return size < 1e-9
            ? Number.POSITIVE_INFINITY
            : Math.max(...polygon.map((p) => pointCross(edge, pointSubtract(p, from)))) / size
        }),
      )
