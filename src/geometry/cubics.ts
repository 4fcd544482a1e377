import type { Path, Piece } from './path.ts'
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
  if (!path.closed && path.pieces.every(({ kind }) => kind !== 'arc')) return path
  const pieces = pathSegments(path).flatMap((segment): Piece[] => {
    if (segment.kind === 'line') return [{ kind: 'line', to: segment.to }]
    if (segment.kind === 'cubic') return [{ kind: 'cubic', c1: segment.c1, c2: segment.c2, to: segment.to }]
    const { centre, radius, startAngle, sweep } = segment
    if (!Number.isFinite(radius) || !Number.isFinite(sweep))
      throw new RangeError(`an arc of radius ${radius} and sweep ${sweep} cannot be drawn`)
    let count = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2)))
    while (cubicArcError(Math.abs(sweep) / count) * radius > tolerance) count++
    const step = sweep / count
    const arm = radius * (4 / 3) * Math.tan(step / 4)
    return Array.from({ length: count }, (_, i): Piece => {
      const [a, b] = [startAngle + step * i, startAngle + step * (i + 1)]
      const from = i === 0 ? segment.from : pointToward(centre, a, radius)
      const to = i === count - 1 ? segment.to : pointToward(centre, b, radius)
      return {
        kind: 'cubic',
        c1: pointToward(from, a + Math.PI / 2, arm),
        c2: pointToward(to, b + Math.PI / 2, -arm),
        to,
      }
    })
  })
  return { start: path.start, pieces, closed: path.closed }
}
