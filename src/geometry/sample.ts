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
    if (segment.kind === 'cubic') {
      for (let k = 1; k < count; k++) points.push(segmentAt(segment, k / count))
    } else if (segment.kind === 'line') {
      // as `segmentAt` has it, without a call for each of thousands of points
      const { from, to } = segment
      const dx = to.x - from.x
      const dy = to.y - from.y
      for (let k = 1; k < count; k++)
        points.push({ x: from.x + dx * (k / count), y: from.y + dy * (k / count) })
    } else {
      const { centre, radius, startAngle, sweep } = segment
      for (let k = 1; k < count; k++) {
        const angle = startAngle + sweep * (k / count)
        points.push({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) })
      }
    }
    points.push(segment.to)
  }
  return points
}
