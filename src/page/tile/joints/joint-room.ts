import { type Box, boxGrow, boxOverlaps, pointsBounds } from '../../../geometry/bounds.ts'
import { segmentDistance } from '../../../geometry/nearest.ts'
import { pathSegments } from '../../../geometry/path.ts'
import { type Point, pointBetween, pointDistance } from '../../../geometry/point.ts'
import { pathSample } from '../../../geometry/sample.ts'
import type { Pattern } from '../../../pattern/pattern.ts'
import { screwRing } from '../../../pattern/timber-marks.ts'
import { pointRoom } from '../../cover/shown-points.ts'
import {
  type Bounded,
  besideOf,
  bounded,
  linesNear,
  type NearLine,
  stretchWithin,
} from '../../room/line-stretches.ts'
import { pairMost } from '../pair-mark.ts'
import { vernierReach } from '../vernier.ts'
import { bandPen, wasteBands } from '../waste-band.ts'

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

/**
 * Room round the neighbourhood of `reach` mm of a share of a joint line, mm; asked once each. Where that is no more than `beyond`, it may be
 * told too large, up to that.
 */
export type Room = (t: number, reach: number, beyond?: number) => number

/** What a joint line has room for. */
export interface JointRoom {
  /** with all that is drawn */
  readonly all: Room
  /** off the line itself alone, and without edges and short lines of timbers: where else too little is left */
  readonly least: Room
  /** whether a scale there would lie on a line, a screw or the short line at a timber's face */
  readonly strikes: (t: number) => boolean
  /** likewise for the sign of the joint */
  readonly strikesSign: (t: number) => boolean
  /** whether that would lie on the grey on the waste side */
  readonly onBand: (t: number) => boolean
}

/** What the joints of a pattern keep off. */
export interface Around {
  readonly segments: readonly Bounded[]
  /** `out`: how far what stands on a joint line reaches out to it, mm; `quiet`: of a timber */
  readonly rounds: readonly {
    readonly at: Point
    readonly radius: number
    readonly out: number
    readonly quiet: boolean
  }[]
  readonly edges: readonly (readonly [Point, Point])[]
  /** along the middle of the grey beside what is sawn, some points together */
  readonly grey: readonly { readonly points: readonly Point[]; readonly bounds: Box }[]
}

/** So many points of the grey are passed by together. */
const together = 12

export const aroundOf = (pattern: Pattern): Around => {
  // joints between pieces of a side are sawn too
  const sawn = pattern.marks.flatMap((mark) =>
    mark.kind === 'stroke' && mark.layer === 'cut' ? pathSegments(mark.path) : [],
  )
  return {
    segments: [...pathSegments(pattern.outline), ...sawn].map(bounded),
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
    grey: wasteBands(pattern.cut).flatMap((path) => {
      const all = pathSample(path, 2)
      return Array.from({ length: Math.ceil(all.length / together) }, (_, i) => {
        const points = all.slice(i * together, (i + 1) * together)
        return { points, bounds: boxGrow(pointsBounds(points), 1e-6) }
      })
    }),
  }
}

/** How a joint line sees a circle that marks keep off, mm. */
interface Round {
  readonly along: number
  readonly beside: number
  readonly radius: number
  readonly out: number
  readonly quiet: boolean
}

/** A line that comes no nearer to a joint line than so matters to none of its marks, mm. */
const farthestReach = Math.max(enough, pairMost + signAir)

/** Nor does what lies so far beyond its ends, mm. */
const alongReach = vernierReach + farthestReach

/** `sign`: radius of the sign of the joint, mm. */
export const roomOf = (pattern: Around, line: readonly [Point, Point], sign: number): JointRoom => {
  const [a, b] = line
  const length = pointDistance(a, b)
  const besideLine = besideOf(line)
  const lines = linesNear(pattern.segments, line, farthestReach)
  /** whether what lies from so far to so far along it comes near to any place on it */
  const isBy = (low: number, high: number, air: number): boolean =>
    high > -alongReach - air && low < length + alongReach + air
  const marks: Round[] = []
  for (const { at, radius, out, quiet } of pattern.rounds) {
    const { along, beside } = besideLine(at)
    if (Math.abs(beside) - radius < enough && isBy(along, along, radius + out))
      marks.push({ along, beside, radius, out, quiet })
  }
  const around = boxGrow(pointsBounds(line), sign + signAir + bandPen.width)
  const grey = pattern.grey.filter(({ bounds }) => boxOverlaps(bounds, around))
  const struck = pattern.edges
    .flatMap(([p, q]) => stretchWithin(besideLine(p), besideLine(q), markHeight + 1.5))
    .filter(({ low, high }) => isBy(low, high, 0))
  /** lines that may come so near to what reaches so far to both sides of a place */
  const linesAt = (at: number, reach: number): readonly NearLine[] =>
    lines.length === 0 ? lines : lines.filter(({ low, high }) => low < at + reach && high > at - reach)
  const toLines = known((t, reach) => {
    let room: number = enough
    const at = t * length
    const near = linesAt(at, reach + enough)
    if (near.length === 0) return room
    // so near to each other that no line runs between two of them unseen
    const count = Math.ceil(reach / 3)
    for (let k = -count; k <= count && room > 0; k++) {
      const off = (k * reach) / count
      const p = pointBetween(a, b, t + off / length)
      for (const { segment, low, high } of near)
        if (low < at + off + enough && high > at + off - enough)
          room = Math.min(room, segmentDistance(segment, p, room))
    }
    return room
  })
  const toMarks = (t: number, reach: number, isAll: boolean): number => {
    let room: number = enough
    const at = t * length
    for (const { along, beside, radius, out, quiet } of marks) {
      if (quiet && !isAll) continue
      const off = Math.max(0, Math.abs(along - at) - reach)
      const kept = radius + (isAll ? out : 0)
      if (off < room + kept && Math.abs(beside) < room + kept)
        room = Math.min(room, Math.hypot(off, beside) - kept)
    }
    return room
  }
  return {
    all: known((t, reach, beyond = Number.NEGATIVE_INFINITY) => {
      const at = t * length
      const isStruck = struck.some(({ low, high }) => low < at + reach + 1 && high > at - reach - 1)
      const shared = (room: number): number => (isStruck && room > 0 ? room * edgeShare : room)
      const toMark = toMarks(t, reach, true)
      // lines leave no more
      if (shared(toMark) <= beyond) return shared(toMark)
      const toLine = toLines(t, reach)
      return shared(Math.min(toLine < onIt ? -enough : toLine, toMark))
    }),
    least: known((t, reach) => Math.min(toLines(t, reach), toMarks(t, reach, false))),
    strikesSign: once(
      (t) =>
        linesAt(t * length, sign + signAir).some(
          ({ segment }) => segmentDistance(segment, pointBetween(a, b, t), sign + signAir) < sign + signAir,
        ) ||
        marks.some(
          ({ along, beside, radius, out, quiet }) =>
            (quiet || out > 0) && Math.hypot(along - t * length, beside) < sign + radius + signAir,
        ),
    ),
    onBand: once((t) => {
      const at = pointBetween(a, b, t)
      const reach = sign + signAir + bandPen.width / 2
      const near = boxGrow({ x0: at.x, y0: at.y, x1: at.x, y1: at.y }, reach)
      return grey.some(
        ({ points, bounds }) => boxOverlaps(bounds, near) && points.some((p) => pointDistance(p, at) < reach),
      )
    }),
    strikes: (t) => {
      const near = linesAt(t * length, vernierReach + enough)
      if (near.length > 0)
        for (let off = -vernierReach - 0.5; off <= vernierReach + 0.5; off += 1.5) {
          const place = t * length + off
          const at = pointBetween(a, b, t + off / length)
          for (const { segment, low, high } of near)
            if (
              low < place + enough &&
              high > place - enough &&
              segmentDistance(segment, at, scaleHeight(off)) < scaleHeight(off)
            )
              return true
        }
      for (const { along, beside, radius } of marks) {
        const off = Math.abs(along - t * length)
        if (off < vernierReach + radius && Math.abs(beside) - radius < scaleHeight(off - radius)) return true
      }
      return false
    },
  }
}

/** Asked once of each share. */
const once = (ask: (t: number) => boolean): ((t: number) => boolean) => {
  const found = new Map<number, boolean>()
  return (t) => {
    let is = found.get(t)
    if (is === undefined) {
      is = ask(t)
      found.set(t, is)
    }
    return is
  }
}

/** Asked once of each share and reach, but where it was no more than it had to be. */
const known = (room: Room): Room => {
  const found = new Map<number, Map<number, number>>()
  // mostly of the same reach as before
  let rooms = new Map<number, number>()
  let ofReach: number | undefined
  return (t, reach, beyond = Number.NEGATIVE_INFINITY) => {
    if (reach !== ofReach) {
      rooms = found.get(reach) ?? new Map<number, number>()
      found.set(reach, rooms)
      ofReach = reach
    }
    let mm = rooms.get(t)
    if (mm === undefined) {
      mm = room(t, reach, beyond)
      if (mm > beyond) rooms.set(t, mm)
    }
    return mm
  }
}
