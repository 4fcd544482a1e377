import { type Path, pathSegments } from './path.ts'
import { type Point, pointCross, pointToward } from './point.ts'

export interface Centroid {
  /** positive where the path runs counter-clockwise, mm² */
  readonly area: number
  readonly centre: Point
}

/**
 * Area and middle of what a closed path of lines and arcs encloses, exact: the polygon of its joints, and the segments between
 * chords and arcs. Throws RangeError on a cubic.
 */
export const pathCentroid = (path: Path): Centroid => {
  const parts = pathSegments({ ...path, closed: true }).flatMap((segment): readonly Centroid[] => {
    const { from, to } = segment
    const triangle = {
      area: pointCross(from, to) / 2,
      centre: { x: (from.x + to.x) / 3, y: (from.y + to.y) / 3 },
    }
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
          { area: (radius ** 2 * turn) / 2, centre: pointToward(centre, startAngle + sweep / 2, out) },
        ]
      }
      case 'cubic':
        throw new RangeError('the area under a cubic is not needed yet')
      default:
        return segment satisfies never
    }
  })
  const area = parts.reduce((sum, part) => sum + part.area, 0)
  const mean = (of: (p: Point) => number): number =>
    parts.reduce((sum, part) => sum + part.area * of(part.centre), 0) / area
  return { area, centre: { x: mean(({ x }) => x), y: mean(({ y }) => y) } }
}
