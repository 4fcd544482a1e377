import { segmentAt } from '../at.ts'
import { pathBounds } from '../bounds.ts'
import { boxCorners, lineCrossings } from '../clip.ts'
import { type Path, pathSegments } from '../path.ts'
import type { Point } from '../point.ts'

/**
 * The parts of parallel lines inside closed paths (even–odd, so that a path within another is a hole): lines in the direction of
 * `angle` (radians), `spacing` mm apart, one of them through the origin.
 */
export const pathChords = (
  paths: readonly Path[],
  angle: number,
  spacing: number,
): readonly (readonly [Point, Point])[] => {
  if (!(spacing > 0)) throw new RangeError(`lines ${spacing} mm apart cannot be drawn`)
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const off = (p: Point): number => p.y * cos - p.x * sin
  const along = (p: Point): number => p.x * cos + p.y * sin
  const corners = paths.flatMap((path) => boxCorners(pathBounds(path)))
  if (corners.length === 0) return []
  const segments = paths.flatMap((path) => pathSegments({ ...path, closed: true }))
  const [least, most] = [Math.min(...corners.map(off)), Math.max(...corners.map(off))]
  const chords: (readonly [Point, Point])[] = []
  for (let k = Math.ceil(least / spacing); k * spacing <= most; k++) {
    // a hair aside, so that no line runs through a corner, where it would be counted twice
    const h = k * spacing + 1e-7
    const p = { x: -h * sin, y: h * cos }
    const q = { x: p.x + cos, y: p.y + sin }
    const hits = segments
      .flatMap((segment) =>
        lineCrossings(segment, p, q)
          .filter((t) => t >= 0 && t < 1)
          .map((t) => segmentAt(segment, t)),
      )
      .sort((a, b) => along(a) - along(b))
    for (let i = 0; i + 1 < hits.length; i += 2)
      if (along(hits[i + 1]!) - along(hits[i]!) > 1e-6) chords.push([hits[i]!, hits[i + 1]!])
  }
  return chords
}
