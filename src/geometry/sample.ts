import { segmentAt } from './at.ts'
import { segmentLength } from './length.ts'
import type { Path } from './path.ts'
import { pathSegments } from './path.ts'
import type { Point } from './point.ts'

/** Points along a path at most `spacing` mm apart along it, the ends of every piece among them; a closed path's as a polygon. */
export const pathSample = (path: Path, spacing: number): readonly Point[] =>
  pathSegments(path).flatMap((segment, i) => {
    const count = Math.max(1, Math.ceil(segmentLength(segment) / spacing))
    const points = Array.from({ length: count }, (_, k) => segmentAt(segment, (k + 1) / count))
    return i === 0 ? [segment.from, ...points] : points
  })
