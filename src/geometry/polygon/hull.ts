import { type Point, pointCross, pointSubtract } from '../point.ts'

/** Corners of the convex hull, counter-clockwise from the leftmost (Andrew's monotone chain, 1979). */
export const convexHull = (points: readonly Point[]): readonly Point[] => {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y)
  const chain = (list: readonly Point[]): Point[] => {
    const hull: Point[] = []
    for (const p of list) {
      while (
        hull.length > 1 &&
        pointCross(pointSubtract(hull.at(-1)!, hull.at(-2)!), pointSubtract(p, hull.at(-1)!)) <= 0
      )
        hull.pop()
      hull.push(p)
    }
    return hull.slice(0, -1)
  }
  return sorted.length < 2 ? sorted : [...chain(sorted), ...chain(sorted.reverse())]
}
