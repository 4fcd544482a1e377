import type { Point } from '../point.ts'

/**
 * A counter-clockwise polygon with a margin of at least `by` mm all round: edges moved out, corners kept sharp up to a right
 * angle, sharper ones cut off. For margins shorter than the edges beside corners that turn in.
 */
export const grownPolygon = (polygon: readonly Point[], by: number): readonly Point[] => {
  if (by === 0) return polygon
  const normals = polygon.map((p, i) => {
    const next = polygon[(i + 1) % polygon.length]!
    const size = Math.hypot(next.x - p.x, next.y - p.y)
    return { x: (next.y - p.y) / size, y: (p.x - next.x) / size }
  })
  return polygon.flatMap((p, i) => {
    const before = normals[(i + polygon.length - 1) % polygon.length]!
    const after = normals[i]!
    /** where the edges moved along two normals meet */
    const meet = (m: Point, n: Point): Point => {
      const reach = by / (1 + m.x * n.x + m.y * n.y)
      return { x: p.x + (m.x + n.x) * reach, y: p.y + (m.y + n.y) * reach }
    }
    const turn = before.x * after.y - before.y * after.x
    const along = before.x * after.x + before.y * after.y
    if (along >= -1e-9 || turn < 0) return [meet(before, after)]
    const size = Math.hypot(before.x + after.x, before.y + after.y)
    // straight back: the tip's own direction
    const middle =
      size > 1e-9
        ? { x: (before.x + after.x) / size, y: (before.y + after.y) / size }
        : { x: -before.y, y: before.x }
    return [meet(before, middle), meet(middle, after)]
  })
}
