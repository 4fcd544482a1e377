import { segmentAt } from './at.ts'
import { segmentLength } from './length.ts'
import type { Path } from './path.ts'
import { pathSegments } from './path.ts'
import type { Point } from './point.ts'

/** Points along a path at most `spacing` mm apart along it, the ends of every piece among them; a closed path's as a polygon. */
export const pathSample = (path: Path, spacing: number): readonly Point[] => {
  const points: Point[] = []
  for (const segment of pathSegments(path)) {
    if (points.length === 0) points.push(segment.from)
    const count = Math.max(1, Math.ceil(segmentLength(segment) / spacing))
    for (let k = 1; k <= count; k++) points.push(segmentAt(segment, k / count))
  }
  return points
}
