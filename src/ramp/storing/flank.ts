import type { Point } from '../../geometry/point.ts'
import type { Curve } from '../curve/curve.ts'

/** A stretch of an outline that rises all the way: where it lies at each height. mm */
export interface Flank {
  readonly low: number
  readonly high: number
  readonly at: (y: number) => number
  readonly straight: boolean
  /** away from what it is the outline of */
  readonly faces: 'left' | 'right'
}

/**
 * A piece of an outline that runs counter-clockwise. Level ones have no flank: what lies beside them tells all about pushing along
 * the floor.
 */
export const lineFlank = (p: Point, q: Point): readonly Flank[] => {
  if (p.y === q.y) return []
  const rises = p.y < q.y
  const [a, b] = rises ? [p, q] : [q, p]
  const slope = (b.x - a.x) / (b.y - a.y)
  const at = (y: number): number => a.x + (y - a.y) * slope
  return [{ low: a.y, high: b.y, at, straight: true, faces: rises ? 'right' : 'left' }]
}

/** Corners run counter-clockwise. */
export const polygonFlanks = (corners: readonly Point[]): readonly Flank[] =>
  corners.flatMap((p, i) => lineFlank(p, corners[(i + 1) % corners.length]!))

export const circleFlanks = (centre: Point, radius: number): readonly Flank[] =>
  [-1, 1].map((side) => ({
    low: centre.y - radius,
    high: centre.y + radius,
    at: (y) => centre.x + side * Math.sqrt(Math.max(0, radius ** 2 - (y - centre.y) ** 2)),
    straight: false,
    faces: side < 0 ? 'left' : 'right',
  }))

/** A curve between two of its places: one that lies on the rider's side of what it is the outline of faces left. */
export const curveFlank = (
  curve: Curve,
  from: number,
  to: number,
  faces: Flank['faces'],
): readonly Flank[] => {
  const [a, b] = [curve.point(from), curve.point(to)]
  if (b.y <= a.y) return []
  const at = (y: number): number => {
    if (y <= a.y) return a.x
    if (y >= b.y) return b.x
    const place = curve.placeAtHeight(y)
    return place === null ? b.x : curve.point(place).x
  }
  return [{ low: a.y, high: b.y, at, straight: false, faces }]
}

/** Seen in a mirror: the back where the front was. */
export const turnedRound = ({ low, high, at, straight, faces }: Flank): Flank => ({
  low,
  high,
  at: (y) => -at(y),
  straight,
  faces: faces === 'left' ? 'right' : 'left',
})

/** Upside down, on what was its highest point. */
export const upsideDown = ({ low, high, at, straight, faces }: Flank, top: number): Flank => ({
  low: top - high,
  high: top - low,
  at: (y) => at(top - y),
  straight,
  faces,
})

export const raised = ({ low, high, at, straight, faces }: Flank, by: number): Flank => ({
  low: low + by,
  high: high + by,
  at: (y) => at(y - by),
  straight,
  faces,
})
