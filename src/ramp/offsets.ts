import { bisect } from '../geometry/bisect.ts'
import { pathSegments } from '../geometry/path.ts'
import { type Point, pointAngle, pointCross, pointDistance, pointSubtract } from '../geometry/point.ts'
import type { Curve } from './curve/curve.ts'
import { middleRise } from './curve/middle-rise.ts'
import { type SwingArm, swingOf } from './offsets-swing.ts'
import type { SolvedQuarter } from './ramp.ts'
import type { Side } from './side/side.ts'

/** A mark on the curve: x back from the panel's front edge, y up from its bottom edge; mm. */
export interface Station extends Point {
  /** along: at a round x, its height is set out; up: at a round y, where the curve is steep */
  readonly by: 'along' | 'up'
  /** on the frame's curve */
  readonly place: number
  /** the notch cuts this bit of the curve away: it only guides the batten */
  readonly cutAway: boolean
}

/** A corner of the cut line, or the middle of a round seat. */
export interface NamedPoint extends Point {
  readonly name: string
}

/** What a builder needs to draw a side's curve without a printer; mm. */
export interface Offsets {
  readonly ramp: string
  /** distance of the stations along the bottom edge, and up the front edge where the curve is steep */
  readonly every: number
  readonly everyUp: number
  /** from the toe to the lip, both of them left out */
  readonly stations: readonly Station[]
  readonly toe: Point
  /** where the uncut curve meets the top line */
  readonly lip: Point
  /** the notch's outline from the top line to the curve; empty without a notch */
  readonly notch: readonly NamedPoint[]
  /** the circle of a round seat */
  readonly seat: { readonly centre: Point; readonly radius: number } | null
  readonly panel: {
    readonly length: number
    readonly height: number
    readonly chamfer: number
    /** bottom front to top back, and top front to bottom back, of the panel before anything is cut off it */
    readonly diagonals: readonly [number, number]
  }
  /** toe to lip, straight, and from the middle of that line square to the curve */
  readonly chord: number
  readonly rise: number
  /** how far a straight line between neighbouring marks misses the curve, where it misses it most */
  readonly miss: number
  /** null for a curve that no arm draws */
  readonly swing: SwingArm | null
}

/** Throws RangeError on a distance that is not above 0. */
export const solveOffsets = (
  ramp: SolvedQuarter,
  every: number,
  sheet: readonly [number, number],
): Offsets => {
  const { side, transition } = ramp
  const { curve, toe, lip } = transition
  const everyUp = every / 2
  const { length, height } = side
  const stations = curveStations(curve, every, everyUp, side.curveEnd)
  const diagonal = Math.hypot(length, height)
  const square = ramp.coping?.seat === 'square'
  return {
    ramp: ramp.name,
    every,
    everyUp,
    stations,
    toe,
    lip,
    notch: notchPoints(side, square),
    seat: ramp.coping && !square ? { centre: ramp.coping.centre, radius: ramp.coping.outside / 2 } : null,
    panel: { length, height, chamfer: ramp.design.chamfer, diagonals: [diagonal, diagonal] },
    chord: pointDistance(toe, lip),
    rise: middleRise(curve),
    miss: straightMiss(curve, stations),
    swing: swingOf(transition, side, sheet),
  }
}

/** Where the curve leaves the builder's more level half: beyond it a height is read off better than a run. */
const steep = Math.PI / 4

/** Nearer to another mark than this, mm, one tells nothing new. */
const apart = 0.5

/** At every round x where the curve is no steeper than 45°, at every round y where it is. */
export const curveStations = (
  curve: Curve,
  every: number,
  everyUp: number,
  curveEnd: number,
): readonly Station[] => {
  if (!(every > 0 && everyUp > 0)) throw new RangeError(`stations every ${every} and ${everyUp} mm`)
  const [toe, lip] = [curve.point(curve.toe), curve.point(curve.lip)]
  const placeAt = (axis: 'x' | 'y', value: number): number =>
    bisect((place) => curve.point(place)[axis] - value, curve.toe, curve.lip)
  const rounds = (axis: 'x' | 'y', step: number): readonly number[] => {
    const first = Math.floor(toe[axis] / step) + 1
    const count = Math.max(0, Math.ceil(lip[axis] / step) - first)
    return Array.from({ length: count }, (_, i) => (first + i) * step)
  }
  const along = rounds('x', every).map((x) => ({ by: 'along' as const, place: placeAt('x', x), x }))
  const up = rounds('y', everyUp).map((y) => ({ by: 'up' as const, place: placeAt('y', y), y }))
  return [
    ...along.filter(({ place }) => curve.slope(place) <= steep),
    ...up.filter(({ place }) => curve.slope(place) > steep),
  ]
    .sort((a, b) => a.place - b.place)
    .map((mark): Station => ({ ...curve.point(mark.place), ...mark, cutAway: mark.place > curveEnd }))
    .filter((station, i, all) =>
      [toe, lip, ...all.slice(Math.max(0, i - 1), i)].every((p) => pointDistance(station, p) >= apart),
    )
}

const notchPoints = (side: Side, square: boolean): readonly NamedPoint[] => {
  const path = side.edges.find((edge) => edge.name === 'notch')?.path
  if (!path) return []
  const corners = [path.start, ...pathSegments(path).map((segment) => segment.to)]
  return corners.map((at, i) => ({
    ...at,
    name:
      i === 0
        ? 'notch, at the top'
        : i === corners.length - 1
          ? 'notch, on the curve'
          : square
            ? 'notch, corner'
            : 'notch, foot of wall',
  }))
}

/** The curve is farthest from a chord where it runs parallel to it. */
const straightMiss = (curve: Curve, stations: readonly Station[]): number => {
  const ends = [curve.toe, ...stations.map((station) => station.place), curve.lip]
  return Math.max(
    ...ends.slice(1).map((to, i) => {
      const from = ends[i]!
      const [a, b] = [curve.point(from), curve.point(to)]
      const angle = pointAngle(a, b)
      const farthest = curve.point(bisect((place) => curve.slope(place) - angle, from, to))
      return Math.abs(pointCross(pointSubtract(b, a), pointSubtract(farthest, a))) / pointDistance(a, b)
    }),
  )
}
