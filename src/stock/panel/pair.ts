import { affineApply, affineRotate, affineScale, affineThen } from '../../geometry/affine.ts'
import { pointsBounds } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { grownPolygon } from '../../geometry/polygon/grown-polygon.ts'
import type { Laid } from './lay.ts'
import { blockedRise, type Profile, profileOf } from './profile.ts'
import { type Blank, shapeOf } from './shape.ts'

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
/** So many of the best are made better, down to these steps. */
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
  const straight = waysAt([0, 90], first, second, kerf, length, overs)
  let found = best(straight.slice(0, 2), measure, length, enough)
  if (found && found.width <= enough) return placed(first, second, kerf, found)
  const tilts = Array.from({ length: 180 / degrees }, (_, i) => i * degrees).filter(
    (angle) => angle % 90 !== 0,
  )
  const coarse = waysAt(tilts, first, second, kerf, length, overs).slice(0, kept)
  const hopeful = coarse.filter(({ width }) => width <= enough + hopeless)
  const tilted = best(hopeful, measure, length, enough)
  if (tilted && (!found || tilted.width < found.width - 0.5)) found = tilted
  return found && placed(first, second, kerf, found)
}

/** Where the second lies best beside the first for each way to turn both, coarsely; the narrowest first. */
const waysAt = (
  angles: readonly number[],
  first: Blank,
  second: Blank,
  kerf: number,
  length: number,
  overs: readonly boolean[],
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
          let way: Way | null = null
          for (let i = 0; i <= strides; i++) {
            const dx = from + ((to - from) * i) / strides
            const width = widthOf(own, other, dx, length)
            // ways that are alike but for the last bits of a sum: the first, on every machine
            if (width < (way?.width ?? Number.POSITIVE_INFINITY) - alike)
              way = { angle, over, mirrored, ended, dx, width }
          }
          if (way) ways.push(way)
        }
  }
  const rank = ({ width }: Way): number => Math.round(width / alike)
  return ways.sort((a, b) => rank(a) - rank(b) || a.angle - b.angle)
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
  const map = affineThen(affineScale(over ? -1 : 1, 1), affineRotate((turn * Math.PI) / 180))
  const loose = polygon.map((p) => affineApply(map, p))
  const { x0, y0, x1, y1 } = pointsBounds(loose)
  const points = loose.map(({ x, y }) => ({ x: x - x0, y: y - y0 }))
  if (over) points.reverse()
  return {
    width: x1 - x0,
    height: y1 - y0,
    rows: profileOf(points),
    grown: profileOf(grownPolygon(points, kerf)),
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
