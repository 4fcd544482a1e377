import type { ArcSegment, Path, Piece } from './path.ts'
import { pathSegments } from './path.ts'
import { pointToward } from './point.ts'

/**
 * Largest radial error of one cubic for an arc of angle θ, as a share of the radius:
 * (2/27) sin⁶(θ/4) / cos²(θ/4) (Goldapp 1991; Dokken 1990).
 */
export const cubicArcError = (angle: number): number =>
  ((2 / 27) * Math.sin(angle / 4) ** 6) / Math.cos(angle / 4) ** 2

/**
 * Arcs become the fewest even cubics whose distance from the arc stays within `tolerance` mm.
 * Throws RangeError where an arc's radius or sweep is not finite, or the tolerance not above 0.
 */
export const pathCubics = (path: Path, tolerance: number): Path => {
  if (!(tolerance > 0)) throw new RangeError(`a tolerance of ${tolerance} mm cannot be kept`)
  // most that is drawn
  if (!path.closed && !hasArc(path)) return path
  const pieces: Piece[] = []
  for (const segment of pathSegments(path))
    if (segment.kind === 'line') pieces.push({ kind: 'line', to: segment.to })
    else if (segment.kind === 'cubic')
      pieces.push({ kind: 'cubic', c1: segment.c1, c2: segment.c2, to: segment.to })
    else addCubics(pieces, segment, tolerance)
  return { start: path.start, pieces, closed: path.closed }
}

const addCubics = (pieces: Piece[], arc: ArcSegment, tolerance: number): void => {
  const { centre, radius, startAngle, sweep } = arc
  if (!Number.isFinite(radius) || !Number.isFinite(sweep))
    throw new RangeError(`an arc of radius ${radius} and sweep ${sweep} cannot be drawn`)
  let count = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2)))
  while (cubicArcError(Math.abs(sweep) / count) * radius > tolerance) count++
  const step = sweep / count
  const arm = radius * (4 / 3) * Math.tan(step / 4)
  let { from } = arc
  for (let i = 0; i < count; i++) {
    const [a, b] = [startAngle + step * i, startAngle + step * (i + 1)]
    const to = i === count - 1 ? arc.to : pointToward(centre, b, radius)
    pieces.push({
      kind: 'cubic',
      c1: pointToward(from, a + Math.PI / 2, arm),
      c2: pointToward(to, b + Math.PI / 2, -arm),
      to,
    })
    from = to
  }
}

export const hasArc = ({ pieces }: Path): boolean => {
  for (let i = 0; i < pieces.length; i++) if (pieces[i]!.kind === 'arc') return true
  return false
}
