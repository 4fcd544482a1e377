import { type Box, boxGrow, boxOverlaps, pointsBounds, segmentBounds } from '../../geometry/bounds.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointBetween, pointCross, pointDistance, pointSubtract } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { vernierReach } from './vernier.ts'
import { bandPen, wasteBands } from './waste-band.ts'

/** How far a mark reaches from its joint line, mm: most of it, and most marks. */
const markHeight = 5
const shortReach = 3.5

/** A mark so near to a line that is sawn lies on it, which is worse than on anything else, mm. */
const onIt = 2

/** No more room than this makes a place better, mm. */
export const enough = 8

/** How far a scale reaches from its joint line to both sides, with its figures about its middle, mm. */
const scaleHeight = (off: number): number => (Math.abs(off) > 11 ? 4.2 : 7)

/** Round a sign, mm. */
const signAir = 0.4

/** Where an edge of a timber lies under a mark, and breaks off there, its room counts as so much less. */
const edgeShare = 0.2

/** Room round the neighbourhood of `reach` mm of a share of a joint line, mm; asked once each. */
export type Room = (t: number, reach: number) => number

interface JointRoom {
  /** with all that is drawn */
  readonly all: Room
  /** off the line itself alone, and without edges and short lines of timbers: where else too little is left */
  readonly least: Room
  /** whether a scale there would lie on a line, a screw or the short line at a timber's face */
  readonly strikes: (t: number) => boolean
  /** likewise for a sign of a radius */
  readonly strikesSign: (t: number, radius: number) => boolean
  /** whether it would lie on the grey on the waste side */
  readonly onBand: (t: number, radius: number) => boolean
}

/** What the joints of a pattern keep off. */
export interface Around {
  readonly segments: readonly { readonly segment: Segment; readonly bounds: Box }[]
  /** `out`: how far what stands on a joint line reaches out to it, mm; `quiet`: of a timber */
  readonly rounds: readonly {
    readonly at: Point
    readonly radius: number
    readonly out: number
    readonly quiet: boolean
  }[]
  readonly edges: readonly (readonly [Point, Point])[]
  /** along the middle of the grey beside what is sawn */
  readonly grey: readonly Point[]
}

export const aroundOf = (pattern: Pattern): Around => {
  // joints between pieces of a side are sawn too
  const sawn = pattern.marks.flatMap((mark) =>
    mark.kind === 'stroke' && mark.layer === 'cut' ? pathSegments(mark.path) : [],
  )
  return {
    segments: [...pathSegments(pattern.outline), ...sawn].map((segment) => ({
      segment,
      bounds: segmentBounds(segment),
    })),
    rounds: [
      ...pattern.screws.flatMap(({ middles }) =>
        middles.map((at) => ({ at, radius: screwRing, out: shortReach, quiet: false })),
      ),
      // short lines at the faces of timbers do not break off
      ...pattern.marks.flatMap((mark) =>
        mark.kind === 'stroke' && mark.layer === 'mark' && !mark.path.closed
          ? pathSample(mark.path, 4).map((at) => ({ at, radius: 0.5, out: shortReach, quiet: true }))
          : [],
      ),
      // a mark reaches from the joint line into the air round a named point
      ...pattern.points.map(({ at }) => ({ at, radius: pointRoom + markHeight, out: 0, quiet: false })),
    ],
    edges: pattern.markPaths.flatMap((path) =>
      pathSegments(path).map(({ from, to }): readonly [Point, Point] => [from, to]),
    ),
    grey: wasteBands(pattern.cut).flatMap((path) => pathSample(path, 2)),
  }
}

/** A point as a joint line sees it, mm. */
interface Beside {
  readonly along: number
  readonly beside: number
}

/** How much of a straight line lies no farther from a joint line than so, along that; none or one. */
const stretchWithin = (
  from: Beside,
  to: Beside,
  reach: number,
): readonly { readonly low: number; readonly high: number }[] => {
  const rise = to.beside - from.beside
  const at = (beside: number): number => (beside - from.beside) / rise
  const [s0, s1] = Math.abs(rise) < 1e-9 ? [0, 1] : [at(-reach), at(reach)]
  const [first, last] = [Math.max(0, Math.min(s0, s1)), Math.min(1, Math.max(s0, s1))]
  if (first >= last || (Math.abs(rise) < 1e-9 && Math.abs(from.beside) > reach)) return []
  const [p, q] = [first, last].map((s) => from.along + s * (to.along - from.along)) as [number, number]
  return [{ low: Math.min(p, q), high: Math.max(p, q) }]
}

/** No reach is larger than `farthest`. */
export const roomOf = (pattern: Around, [a, b]: readonly [Point, Point], farthest: number): JointRoom => {
  const length = pointDistance(a, b)
  const across = { x: (b.x - a.x) / length, y: (b.y - a.y) / length }
  const besideLine = (p: Point): Beside => {
    const away = pointSubtract(p, a)
    return { along: away.x * across.x + away.y * across.y, beside: pointCross(across, away) }
  }
  // farther off than this nothing matters
  const beyond = enough + farthest
  const around = boxGrow(pointsBounds([a, b]), beyond)
  const middle = pointBetween(a, b, 0.5)
  const segments = pattern.segments
    .filter(
      ({ segment, bounds }) =>
        boxOverlaps(bounds, around) && segmentDistance(segment, middle) < length / 2 + beyond,
    )
    .map(({ segment }) => segment)
  const marks = pattern.rounds
    .map((round) => ({ ...round, ...besideLine(round.at) }))
    .filter(({ beside, radius }) => Math.abs(beside) - radius < enough)
  const nearBand = boxGrow(pointsBounds([a, b]), farthest + signAir + bandPen.width)
  const grey = pattern.grey.filter(({ x, y }) => boxOverlaps({ x0: x, y0: y, x1: x, y1: y }, nearBand))
  const struck = pattern.edges.flatMap(([p, q]) => {
    return stretchWithin(besideLine(p), besideLine(q), markHeight + 1.5)
  })
  const toLines = known((t, reach) => {
    let room: number = enough
    // so near to each other that no line runs between two of them unseen
    const count = Math.ceil(reach / 3)
    for (let k = -count; k <= count && room > 0 && segments.length > 0; k++) {
      const at = pointBetween(a, b, t + (k * reach) / count / length)
      for (const segment of segments) room = Math.min(room, segmentDistance(segment, at))
    }
    return room
  })
  const toMarks = (t: number, reach: number, isAll: boolean): number => {
    let room: number = enough
    for (const { along, beside, radius, out, quiet } of marks) {
      if (quiet && !isAll) continue
      const off = Math.abs(along - t * length) - reach
      room = Math.min(room, Math.hypot(Math.max(0, off), beside) - radius - (isAll ? out : 0))
    }
    return room
  }
  return {
    all: known((t, reach) => {
      const at = t * length
      const lines = toLines(t, reach)
      const room = Math.min(lines < onIt ? -enough : lines, toMarks(t, reach, true))
      const isStruck = struck.some(({ low, high }) => low < at + reach + 1 && high > at - reach - 1)
      return isStruck && room > 0 ? room * edgeShare : room
    }),
    least: known((t, reach) => Math.min(toLines(t, reach), toMarks(t, reach, false))),
    strikesSign: (t, reach) =>
      segments.some((segment) => segmentDistance(segment, pointBetween(a, b, t)) < reach + signAir) ||
      marks.some(
        ({ along, beside, radius, out, quiet }) =>
          (quiet || out > 0) && Math.hypot(along - t * length, beside) < reach + radius + signAir,
      ),
    onBand: (t, reach) => {
      const at = pointBetween(a, b, t)
      return grey.some((p) => pointDistance(p, at) < reach + signAir + bandPen.width / 2)
    },
    strikes: (t) => {
      for (let off = -vernierReach - 0.5; off <= vernierReach + 0.5; off += 1.5) {
        const at = pointBetween(a, b, t + off / length)
        if (segments.some((segment) => segmentDistance(segment, at) < scaleHeight(off))) return true
      }
      return marks.some(({ along, beside, radius }) => {
        const off = along - t * length
        return (
          Math.abs(off) < vernierReach + radius &&
          Math.abs(beside) - radius < scaleHeight(Math.abs(off) - radius)
        )
      })
    },
  }
}

/** Asked once of each share and reach. */
const known = (room: Room): Room => {
  const found = new Map<number, Map<number, number>>()
  return (t, reach) => {
    const rooms = found.get(reach) ?? new Map<number, number>()
    found.set(reach, rooms)
    const mm = rooms.get(t) ?? room(t, reach)
    rooms.set(t, mm)
    return mm
  }
}
