import type { Point } from '../point.ts'

/** Corners of the convex hull, counter-clockwise from the leftmost (Andrew's monotone chain, 1979). */
export const convexHull = (points: readonly Point[]): readonly Point[] => {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y)
  const chain = (list: readonly Point[]): Point[] => {
    const hull: Point[] = []
    for (const p of list) {
      while (hull.length > 1 && !turnsLeft(hull[hull.length - 2]!, hull[hull.length - 1]!, p)) hull.pop()
      hull.push(p)
    }
    return hull.slice(0, -1)
  }
  return sorted.length < 2 ? sorted : [...chain(sorted), ...chain(sorted.reverse())]
}

/** Whether the way from one point over another to a third bends to the left there. */
const turnsLeft = (from: Point, over: Point, to: Point): boolean =>
  (over.x - from.x) * (to.y - over.y) - (over.y - from.y) * (to.x - over.x) > 0
