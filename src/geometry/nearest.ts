import { segmentAt } from './at.ts'
import type { ArcSegment, Path, Segment } from './path.ts'
import { pathSegments } from './path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from './point.ts'

/** Whether a point lies beside an arc: on a normal of it, and not beyond its ends. */
const isBeside = ({ centre, startAngle, sweep }: ArcSegment, p: Point): boolean => {
  const turn = 2 * Math.PI
  const ahead = (pointAngle(centre, p) - startAngle) * Math.sign(sweep)
  return ((ahead % turn) + turn) % turn <= Math.abs(sweep)
}

/** Steps in which a cubic is looked at before the best of them is narrowed down; a piece of ours turns by less than 90°. */
const looks = 32

/** Where on a cubic something is least: the best of even steps, narrowed down by the golden section to 1e-12 of the cubic. */
const leastPlace = (of: (t: number) => number): number => {
  const steps = Array.from({ length: looks + 1 }, (_, i) => of(i / looks))
  const best = steps.indexOf(Math.min(...steps))
  let [low, high] = [Math.max(0, best - 1) / looks, Math.min(looks, best + 1) / looks]
  const share = (Math.sqrt(5) - 1) / 2
  while (high - low > 1e-12) {
    const [a, b] = [high - share * (high - low), low + share * (high - low)]
    if (of(a) <= of(b)) high = b
    else low = a
  }
  const middle = (low + high) / 2
  return of(middle) < steps[best]! ? middle : best / looks
}

/** The point of a segment that lies nearest to another: closed forms, of a cubic narrowed down. */
const segmentNearest = (segment: Segment, p: Point): Point => {
  const { from, to } = segment
  switch (segment.kind) {
    case 'line': {
      const dx = to.x - from.x
      const dy = to.y - from.y
      const size = dx * dx + dy * dy
      const t = size === 0 ? 0 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / size
      return pointBetween(from, to, Math.min(1, Math.max(0, t)))
    }
    case 'arc':
      if (isBeside(segment, p))
        return pointToward(segment.centre, pointAngle(segment.centre, p), segment.radius)
      return pointDistance(p, from) <= pointDistance(p, to) ? from : to
    case 'cubic':
      return segmentAt(
        segment,
        leastPlace((t) => pointDistance(p, segmentAt(segment, t))),
      )
    default:
      return segment satisfies never
  }
}

/** So much nearer than its circle's distance says may be one that is rounded, mm. */
const hair = 1e-9

/** Distance of a point from a segment, mm; whatever is more than `most` where it is not less. */
export const segmentDistance = (segment: Segment, p: Point, most = Number.POSITIVE_INFINITY): number => {
  switch (segment.kind) {
    case 'line':
    case 'cubic':
      return pointDistance(p, segmentNearest(segment, p))
    case 'arc': {
      const off = Math.abs(pointDistance(segment.centre, p) - segment.radius)
      // no point of an arc lies nearer than its circle
      if (off > most + hair || isBeside(segment, p)) return off
      return Math.min(pointDistance(p, segment.from), pointDistance(p, segment.to))
    }
    default:
      return segment satisfies never
  }
}

/** Distance of a point from a path, mm. */
export const pathDistance = (path: Path, p: Point): number => {
  let least = Number.POSITIVE_INFINITY
  for (const segment of pathSegments(path)) least = Math.min(least, segmentDistance(segment, p))
  return least
}

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
  if (a.kind === 'cubic')
    return [
      segmentAt(
        a,
        leastPlace((t) => segmentDistance(b, segmentAt(a, t))),
      ),
    ]
  if (a.kind === 'line') return ends
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

/** The gap between two segments that do not cross. */
export const segmentsGap = (a: Segment, b: Segment): Gap => {
  const tries = [
    ...candidates(a, b).map((from): readonly [Point, Point] => [from, segmentNearest(b, from)]),
    ...candidates(b, a).map((to): readonly [Point, Point] => [segmentNearest(a, to), to]),
  ]
  return tries
    .map(([from, to]): Gap => ({ from, to, distance: pointDistance(from, to) }))
    .reduce((least, gap) => (gap.distance < least.distance ? gap : least))
}
