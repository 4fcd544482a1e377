import { showRange } from '../design/plausible.ts'
import { rampPath, rangeAt } from '../design/schema.ts'
import type { Point } from '../geometry/point.ts'
import { showLength, type Units } from '../length.ts'
import { measured, offer } from '../ramp/check/offer.ts'
import { type Matched, matchCircle } from '../ramp/match/matched.ts'
import type { TwoLengths } from '../ramp/match/two-lengths.ts'
import { outOfOrder, zeroWords } from '../ramp/match/zero-words.ts'

/** Which layer was measured: the ridden face of a ramp that stands, or the edge of a side. */
export type MeasuredLayer = 'surface' | 'frame'

/** A circle that matches a ramp, as scripts read it: mm. */
export interface Fit {
  readonly radius: number
  /** along the floor and up, in the readings' own directions; from a chord: along it, and square to it */
  readonly centre: readonly [number, number]
  readonly interval: readonly [least: number, most: number]
  /** of all points, as listed, more than 0 outside: from the mended circle where there is one */
  readonly residuals: readonly number[]
  readonly suspect: readonly number[]
  /** whether a circle explains the points at the stated error of a reading */
  readonly believable: boolean
  /** the circle without a suspect point, or with two heights exchanged; null where no point is suspect */
  readonly mended: Pick<Fit, 'radius' | 'centre' | 'interval'> | null
  /** what goes into the design file, of the mended points where some are suspect; a chord tells nothing of the floor; null where the design file takes no such curve */
  readonly transition: string | null
}

export interface FitAnswer {
  readonly fit: Fit
  /** what is odd about the readings, worst first, in words */
  readonly doubts: readonly string[]
}

/** A line of the design file, or in words why there is none. */
interface Line {
  readonly transition: string | null
  readonly refused: readonly string[]
}

const transitionOf = (radius: number, level: number | null, layer: MeasuredLayer, units: Units): Line => {
  const { nearest, nearestMm } = offer(units)
  const keys = [
    { key: `circle.${layer}`, mm: radius, words: 'a radius' },
    ...(level === null ? [] : [{ key: `tangent.${layer}`, mm: level, words: 'a tangent' }]),
  ]
  const refused = keys.flatMap(({ key, mm, words }) => {
    const range = rangeAt(`${rampPath('quarter')}.transition.${key}`)
    const typed = nearestMm(mm)
    return typed >= range.least && typed <= range.most
      ? []
      : [
          `the design file takes ${words} of ${showRange(range, units)}, not ${nearest(mm)}: it has no line for this curve`,
        ]
  })
  const typed = (mm: number): string => showLength(nearestMm(mm), units)
  return {
    transition:
      refused.length > 0
        ? null
        : `transition: { circle: { ${layer}: ${typed(radius)} }${level === null ? '' : `, tangent: { ${layer}: ${typed(level)} }`} }`,
    refused,
  }
}

/** The points without a suspect one, or with the heights of two exchanged; null where there is none. */
const mendedPoints = (
  points: readonly Point[],
  { suspect, swapped }: Pick<Matched, 'suspect' | 'swapped'>,
): readonly Point[] | null => {
  if (swapped !== null) {
    const [i, k] = swapped.map((number) => number - 1) as [number, number]
    return points.map((p, at) =>
      at === i ? { x: p.x, y: points[k]!.y } : at === k ? { x: p.x, y: points[i]!.y } : p,
    )
  }
  return suspect.length > 0 ? points.filter((_, i) => !suspect.includes(i + 1)) : null
}

/** How far a point lies outside of a circle; less than 0 inside. */
const beyond = ({ x, y }: Point, { centre, radius }: Pick<Matched, 'centre' | 'radius'>): number =>
  Math.hypot(x - centre.x, y - centre.y) - radius

/** From measured points; null where they lie on one line. */
export const fitPoints = (
  points: readonly Point[],
  readingError: number,
  layer: MeasuredLayer,
  units: Units,
): FitAnswer | null => {
  const matched = matchCircle(points, readingError)
  if (matched === null) return null
  const mended = mendedPoints(points, matched)
  const others = mended && matchCircle(mended, readingError)
  const { radius, centre } = matched
  const best = others ?? matched
  const used = others ? mended! : points
  const hollow = best.centre.y > (used[0]!.y + used.at(-1)!.y) / 2
  const level = hollow ? best.centre.y - best.radius : null
  const { transition, refused } = transitionOf(best.radius, level, layer, units)
  return {
    fit: {
      radius,
      centre: [centre.x, centre.y],
      interval: matched.interval,
      residuals: others ? points.map((point) => beyond(point, others)) : matched.residuals,
      suspect: matched.swapped ?? matched.suspect,
      believable: matched.believable,
      mended: others && {
        radius: others.radius,
        centre: [others.centre.x, others.centre.y],
        interval: others.interval,
      },
      transition,
    },
    doubts: [...refused, ...doubtsOf(points, matched, best, readingError, level, transition !== null, units)],
  }
}

const doubtsOf = (
  points: readonly Point[],
  matched: Matched,
  best: Pick<Matched, 'centre' | 'radius'>,
  readingError: number,
  level: number | null,
  keeps: boolean,
  units: Units,
): readonly string[] => {
  const { suspect, swapped, believable, scatter } = matched
  const disorder = outOfOrder(points)
  const zero = level === null ? null : zeroWords(level, best.centre, best.radius, readingError, keeps, units)
  return [
    ...(swapped
      ? [
          `the heights of points ${swapped[0]} and ${swapped[1]} fit when they are exchanged: look at your list`,
        ]
      : []),
    ...suspect.map((number) =>
      best === matched
        ? `point ${number} does not belong to the others: measure it again`
        : `point ${number} lies ${measured(Math.abs(beyond(points[number - 1]!, best)), units)} off the circle of the others: measure it again`,
    ),
    ...(level === null
      ? ['the points bulge upward: x goes along the floor, y up from it; are the two columns exchanged?']
      : []),
    ...(!believable && swapped === null && suspect.length === 0
      ? [
          `the points lie ${measured(scatter!, units)} off the circle in the mean, where ${measured(readingError, units)} was expected: the curve may be no circle`,
        ]
      : []),
    ...(points.length === 3
      ? ['three points lie on a circle whatever they are: measure more to see an error']
      : []),
    ...(disorder.length > 0
      ? [
          `point${disorder.length === 1 ? '' : 's'} ${disorder.join(', ')} ${disorder.length === 1 ? 'lies' : 'lie'} before the one listed above: the order does not matter here, a mixed-up line does`,
        ]
      : []),
    ...(zero === null ? [] : [zero]),
  ]
}

/** From two lengths: no error can show, so the interval is all that is told. */
export const fitTwoLengths = (
  { radius, interval }: TwoLengths,
  centre: readonly [number, number],
  level: number | null,
  layer: MeasuredLayer,
  units: Units,
): FitAnswer => {
  const { transition, refused } = transitionOf(radius, level, layer, units)
  return {
    fit: {
      radius,
      centre,
      interval,
      residuals: [],
      suspect: [],
      believable: true,
      mended: null,
      transition,
    },
    doubts: [
      ...refused,
      'two lengths fit a circle whatever they are: measure three or more points to see an error',
    ],
  }
}

/** The answer as a builder reads it. */
export const fitText = (
  { fit, doubts }: FitAnswer,
  points: readonly Point[],
  readingError: number,
  units: Units,
): string => {
  const show = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const often = points.length > 0 ? '95 times of 100' : 'at worst'
  const circle = ({ radius, centre, interval }: Pick<Fit, 'radius' | 'centre' | 'interval'>) => [
    `radius   ${show(radius)}${Number.isFinite(interval[1]) ? `; between ${show(interval[0])} and ${show(interval[1])} ${often}` : ''}`,
    `centre   ${show(centre[0])} along, ${show(centre[1])} up`,
  ]
  const from = points.length > 0 ? `${points.length} points` : 'two lengths'
  return [
    `${from}, each read to ${showLength(readingError, units, { decimals: 1, unit: true })}; lengths in ${units === 'in' ? 'inches' : 'mm'}`,
    '',
    ...circle(fit),
    ...(points.length > 0
      ? [
          '',
          `  no.      along         up  off the circle${fit.mended ? ' below' : ''}`,
          ...points.map(
            ({ x, y }, i) =>
              `  ${String(i + 1).padStart(3)}  ${show(x).padStart(9)}  ${show(y).padStart(9)}  ${sided(fit.residuals[i]!, show)}${fit.suspect.includes(i + 1) ? '  <- look at this one' : ''}`,
          ),
        ]
      : []),
    ...(fit.mended
      ? [
          '',
          fit.suspect.length === 1
            ? `Without point ${fit.suspect[0]}:`
            : `With the heights of points ${fit.suspect.join(' and ')} exchanged:`,
          ...circle(fit.mended),
        ]
      : []),
    ...(fit.transition === null ? [] : ['', 'For the design file:', `    ${fit.transition}`]),
    ...(doubts.length > 0 ? ['', ...doubts.map((words) => `watch ${words}`)] : []),
    '',
  ].join('\n')
}

/** A point beyond the circle lies in the wood. */
const sided = (residual: number, show: (mm: number) => string): string => {
  const shown = show(Math.abs(residual))
  return shown === '0' ? 'on it' : `${shown} ${residual > 0 ? 'outside' : 'inside'}`
}
