import { affineApply, affineRotate, affineScale, affineThen } from '../../geometry/affine.ts'
import { pointsBounds } from '../../geometry/bounds.ts'
import { radiansOf } from '../../geometry/degrees.ts'
import type { Point } from '../../geometry/point.ts'
import { grownPolygon } from '../../geometry/polygon/grown-polygon.ts'
import type { Laid } from './place/lay.ts'
import { blockedRise, columnsOf, type Profile } from './place/profile.ts'
import { type Blank, shapeOf } from './place/shape.ts'

/** Two pieces in the least width that a search finds for a length: their boxes start at zero. */
export interface PairFit {
  readonly width: number
  readonly length: number
  readonly laid: readonly [Laid, Laid]
}

interface Turned {
  readonly width: number
  readonly height: number
  readonly rows: Profile
  readonly grown: Profile
}

/** How the second lies to the first, and the angle of the first. Degrees. */
interface Way {
  readonly angle: number
  readonly over: boolean
  /** turned as the first is, or as its mirror image; then perhaps end for end */
  readonly mirrored: boolean
  readonly ended: boolean
  readonly dx: number
  readonly width: number
}

/** Steps of the search: degrees, and parts of the length. */
const degrees = 3
const strides = 40
/** Where pieces lie level or upright the length is looked through in so many times as many steps; so many of the best are moved to their best, and so many of those turned too. */
const [finer, movedWays, turnedWays] = [4, 12, 2]
/** So many of the best askew are made better, down to these steps. */
const kept = 4
const [leastAngle, leastMove] = [0.01, 0.02]
/** Widths this near are the same, mm. */
const alike = 1e-6

/**
 * The narrowest strip of a length, mm, in which two pieces lie `kerf` apart, both turned by one angle: the second as the first
 * or as its mirror image, end for end or not. `overs`: ways in which the second may lie. Null where the length takes neither.
 * `enough`: a width that need not be bettered; `hopeless`: how much
 * wider a coarse find may be to be worth bettering.
 */
export const pairFit = (
  first: Blank,
  second: Blank,
  kerf: number,
  length: number,
  overs: readonly boolean[],
  enough = 0,
  hopeless = Number.POSITIVE_INFINITY,
): PairFit | null => {
  const measure = (way: Omit<Way, 'width'>): number => {
    const own = turnedOf(first.fine, way.angle, false, kerf)
    if (own.width > length) return Number.POSITIVE_INFINITY
    return widthOf(own, turnedOf(second.fine, turnOf(way), way.over, kerf), way.dx, length)
  }
  const straight = waysAt([0, 90], first, second, kerf, length, overs, finer * strides)
    .slice(0, movedWays)
    .map((way) => movedBest(way, first, second, kerf, length))
    .sort(byWidth)
  let found = best(straight.slice(0, turnedWays), measure, length, enough)
  if (found && found.width <= enough) return placed(first, second, kerf, found)
  const tilts = Array.from({ length: 180 / degrees }, (_, i) => i * degrees).filter(
    (angle) => angle % 90 !== 0,
  )
  const coarse = waysAt(tilts, first, second, kerf, length, overs, strides).slice(0, kept)
  const hopeful = coarse.filter(({ width }) => width <= enough + hopeless)
  const tilted = best(hopeful, measure, length, enough)
  if (tilted && (!found || tilted.width < found.width - 0.5)) found = tilted
  return found && placed(first, second, kerf, found)
}

/** Where the second lies best beside the first for each way to turn both, coarsely; the narrowest first. In more steps every place that is better than its neighbours. */
const waysAt = (
  angles: readonly number[],
  first: Blank,
  second: Blank,
  kerf: number,
  length: number,
  overs: readonly boolean[],
  steps: number,
): readonly Way[] => {
  const ways: Way[] = []
  for (const angle of angles) {
    const own = turnedOf(first.coarse(), angle, false, kerf)
    if (own.width > length) continue
    for (const over of overs)
      for (const mirrored of angle % 90 === 0 ? [false] : [false, true])
        for (const ended of [false, true]) {
          const other = turnedOf(second.coarse(), turnOf({ angle, mirrored, ended }), over, kerf)
          if (other.width > length) continue
          // from both left ends flush beyond either end, as far as the length allows
          const [from, to] = [own.width - length, length - other.width]
          const at = (i: number): Way => {
            const dx = from + ((to - from) * i) / steps
            return { angle, over, mirrored, ended, dx, width: widthOf(own, other, dx, length) }
          }
          const row = Array.from({ length: steps + 1 }, (_, i) => at(i))
          // ways that are alike but for the last bits of a sum: the first, on every machine
          const lows = row.filter(
            ({ width }, i) =>
              Number.isFinite(width) &&
              width < (row[i - 1]?.width ?? Number.POSITIVE_INFINITY) - alike &&
              width <= (row[i + 1]?.width ?? Number.POSITIVE_INFINITY) + alike,
          )
          if (steps > strides) ways.push(...lows)
          else if (lows.length > 0)
            ways.push(lows.reduce((least, way) => (way.width < least.width - alike ? way : least)))
        }
  }
  return ways.sort(byWidth)
}

const byWidth = (a: Way, b: Way): number =>
  Math.round(a.width / alike) - Math.round(b.width / alike) || a.angle - b.angle

/** The same way where the second lies best along the first, by small moves: shapes are turned once for all. */
const movedBest = (way: Way, first: Blank, second: Blank, kerf: number, length: number): Way => {
  const own = turnedOf(first.fine, way.angle, false, kerf)
  const other = turnedOf(second.fine, turnOf(way), way.over, kerf)
  const at = (dx: number): Way => ({ ...way, dx, width: widthOf(own, other, dx, length) })
  let best = at(way.dx)
  for (let move = length / strides / 2; move > leastMove; move /= 2)
    for (const by of [-move, move]) {
      const next = at(best.dx + by)
      if (next.width < best.width - alike) best = next
    }
  return best
}

const best = (
  ways: readonly Way[],
  measure: (way: Omit<Way, 'width'>) => number,
  length: number,
  enough: number,
): Way | null => {
  let found: Way | null = null
  for (const way of ways) {
    const better = bettered(way, measure, length / strides)
    if (!found || better.width < found.width - alike) found = better
    if (found.width <= enough) break
  }
  return found
}

const turnOf = ({ angle, mirrored, ended }: Pick<Way, 'angle' | 'mirrored' | 'ended'>): number =>
  (mirrored ? -angle : angle) + (ended ? 180 : 0)

const turnedOf = (polygon: readonly Point[], turn: number, over: boolean, kerf: number): Turned => {
  const map = affineThen(affineScale(over ? -1 : 1, 1), affineRotate(radiansOf(turn)))
  const loose = polygon.map((p) => affineApply(map, p))
  const { x0, y0, x1, y1 } = pointsBounds(loose)
  const points = loose.map(({ x, y }) => ({ x: x - x0, y: y - y0 }))
  if (over) points.reverse()
  return {
    width: x1 - x0,
    height: y1 - y0,
    rows: columnsOf(points),
    grown: columnsOf(grownPolygon(points, kerf)),
  }
}

/** Width of both when the second lies `dx` along the first, above it or below it, whichever is less. */
const widthOf = (own: Turned, other: Turned, dx: number, length: number): number => {
  if (Math.max(own.width, dx + other.width) - Math.min(0, dx) > length + 1e-9) return Number.POSITIVE_INFINITY
  const blocked = blockedRise(own.grown, other.rows, dx)
  if (!blocked) return Math.max(own.height, other.height)
  return Math.min(...blocked.map((rise) => bothHigh(own, other, rise)))
}

const bothHigh = (own: Turned, other: Turned, rise: number): number =>
  Math.max(own.height, rise + other.height) - Math.min(0, rise)

/** Small moves and turns, each kept while it narrows the strip, halved when none does. */
const bettered = (way: Way, measure: (way: Omit<Way, 'width'>) => number, stride: number): Way => {
  let best: Way = { ...way, width: measure(way) }
  for (
    let [turn, move] = [degrees / 2, stride / 2];
    turn > leastAngle || move > leastMove;
    turn /= 2, move /= 2
  ) {
    const tries = [
      { ...best, dx: best.dx - move },
      { ...best, dx: best.dx + move },
      { ...best, angle: best.angle - turn },
      { ...best, angle: best.angle + turn },
    ]
    const next = tries
      .map((one) => ({ ...one, width: measure(one) }))
      .reduce((least, one) => (one.width < least.width - alike ? one : least))
    if (next.width < best.width - alike) {
      best = next
      // the same step once more
      turn *= 2
      move *= 2
    }
  }
  return best
}

const placed = (first: Blank, second: Blank, kerf: number, way: Way): PairFit => {
  const [own, other] = [shapeOf(first, way.angle, false, kerf), shapeOf(second, turnOf(way), way.over, kerf)]
  const blocked = blockedRise(own.grown.rows(), other.rows(), way.dx)
  const high = (rise: number): number => Math.max(own.height, rise + other.height) - Math.min(0, rise)
  const [low, up] = blocked ?? [0, 0]
  const rise = high(low) < high(up) - alike ? low : up
  const [left, down] = [Math.min(0, way.dx), Math.min(0, rise)]
  return {
    width: high(rise),
    length: Math.max(own.width, way.dx + other.width) - left,
    laid: [
      { shape: own, x: -left, y: -down },
      { shape: other, x: way.dx - left, y: rise - down },
    ],
  }
}
