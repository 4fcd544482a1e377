import { segmentNearest } from './nearest.ts'
import type { Segment } from './path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from './point.ts'

/** Where two things that do not cross come nearest to each other. */
export interface Gap {
  readonly from: Point
  readonly to: Point
  /** mm */
  readonly distance: number
}

/** Points of `a` at which the nearest one of `b` may lie: its ends, and where its normal may be one of `b` too. */
const candidates = (a: Segment, b: Segment): readonly Point[] => {
  const ends = [a.from, a.to]
  if (a.kind !== 'arc') return ends
  // a line's normal through the centre, or the line of both centres
  const along =
    b.kind === 'line'
      ? pointAngle(b.from, b.to) + Math.PI / 2
      : b.kind === 'arc'
        ? pointAngle(a.centre, b.centre)
        : null
  if (along === null) return ends
  const sides = [along, along + Math.PI].map((angle) => pointToward(a.centre, angle, a.radius))
  // one that is not on the arc falls back to its nearer end
  return [...ends, ...sides.map((p) => segmentNearest(a, p))]
}

/** The gap between two segments of lines and arcs that do not cross. Throws RangeError on a cubic. */
export const segmentsGap = (a: Segment, b: Segment): Gap => {
  const tries = [
    ...candidates(a, b).map((from): readonly [Point, Point] => [from, segmentNearest(b, from)]),
    ...candidates(b, a).map((to): readonly [Point, Point] => [segmentNearest(a, to), to]),
  ]
  return tries
    .map(([from, to]): Gap => ({ from, to, distance: pointDistance(from, to) }))
    .reduce((least, gap) => (gap.distance < least.distance ? gap : least))
}
