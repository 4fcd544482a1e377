import { segmentAt } from './at.ts'
import { type CubicSegment, type Path, pathSegments } from './path.ts'
import { type Point, pointCross, pointToward } from './point.ts'

export interface Centroid {
  /** positive where the path runs counter-clockwise, mm² */
  readonly area: number
  readonly centre: Point
}

/** Area, and area times its middle. */
interface Moments {
  readonly area: number
  readonly x: number
  readonly y: number
}

const momentsOf = (area: number, centre: Point): Moments => ({ area, x: area * centre.x, y: area * centre.y })

/** Places and weights in 0 … 1 of Gauss's rule of five points, exact up to degree 9 (NIST DLMF 3.5, table 3.5.2). */
const gauss = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
].map(([x, w]): readonly [number, number] => [(1 + x!) / 2, w! / 2])

/** What the ray from the origin to a point of a cubic sweeps: polynomials of degree 5 and 8 in its parameter. */
const swept = (cubic: CubicSegment): Moments => {
  const { from, c1, c2, to } = cubic
  let [area, x, y] = [0, 0, 0]
  for (const [t, weight] of gauss) {
    const p = segmentAt(cubic, t)
    const u = 1 - t
    const [a, b, c] = [3 * u * u, 6 * u * t, 3 * t * t]
    const along = {
      x: a * (c1.x - from.x) + b * (c2.x - c1.x) + c * (to.x - c2.x),
      y: a * (c1.y - from.y) + b * (c2.y - c1.y) + c * (to.y - c2.y),
    }
    const cross = weight * pointCross(p, along)
    area += cross / 2
    x += (cross * p.x) / 3
    y += (cross * p.y) / 3
  }
  return { area, x, y }
}

/**
 * Area and middle of what a closed path encloses, exact: the polygon of its joints, the segments between chords and arcs, and what
 * cubics sweep.
 */
export const pathCentroid = (path: Path): Centroid => {
  const parts = pathSegments({ ...path, closed: true }).flatMap((segment): readonly Moments[] => {
    if (segment.kind === 'cubic') return [swept(segment)]
    const { from, to } = segment
    const triangle = momentsOf(pointCross(from, to) / 2, {
      x: (from.x + to.x) / 3,
      y: (from.y + to.y) / 3,
    })
    switch (segment.kind) {
      case 'line':
        return [triangle]
      case 'arc': {
        const { centre, radius, startAngle, sweep } = segment
        const turn = sweep - Math.sin(sweep)
        // the middle of a segment of a circle lies 4 r sin³(θ/2) / (3 (θ − sin θ)) from the centre
        const out = turn === 0 ? radius : (4 * radius * Math.sin(sweep / 2) ** 3) / (3 * turn)
        return [
          triangle,
          momentsOf((radius ** 2 * turn) / 2, pointToward(centre, startAngle + sweep / 2, out)),
        ]
      }
      default:
        return segment satisfies never
    }
  })
  const sum = (of: (part: Moments) => number): number => parts.reduce((all, part) => all + of(part), 0)
  const area = sum((part) => part.area)
  return { area, centre: { x: sum((part) => part.x) / area, y: sum((part) => part.y) / area } }
}
