import type { Point } from '../../geometry/point.ts'
import { type CircleFit, fitCircle } from './circle-fit.ts'
import { studentT } from './student.ts'

/** A circle that matches what was measured, and how far it can be trusted; mm. */
export interface Matched {
  readonly radius: number
  readonly centre: Point
  /** holds the true radius 95 times of 100 */
  readonly interval: readonly [least: number, most: number]
  /** of each point: more than 0 outside of the circle, so on the wood's side */
  readonly residuals: readonly number[]
  /** numbers of the points, from 1, that do not belong to it */
  readonly suspect: readonly number[]
  /** two points whose heights fit when they are exchanged; numbers from 1 */
  readonly swapped: readonly [number, number] | null
  /** whether a circle explains the points, at the given reading error */
  readonly believable: boolean
  /** the mean error of a reading that the points themselves show; null for three points */
  readonly scatter: number | null
}

/** A point is named when its distance from the circle of the others is so many times what theirs lets expect. */
const suspectTimes = 3.5
/** A circle is doubted when the points scatter so many times what the reading error lets expect. */
const doubtTimes = 2
/** An exchange is named when it leaves less than this share of the squares. */
const swapShare = 0.2

/** `readingError`: what one reading may be off, mm. Null where the points lie on a line. */
export const matchCircle = (points: readonly Point[], readingError: number): Matched | null => {
  const fit = fitCircle(points)
  if (fit === null) return null
  const swapped = swappedPoints(points, fit, readingError)
  const suspect = swapped === null ? suspectPoint(points, fit, readingError) : null
  const spare = points.length - 3
  const scatter = spare > 0 ? Math.sqrt(squares(fit) / spare) : null
  const half = scatter === null ? fit.radiusError * readingError : studentT(spare) * scatter * fit.radiusError
  return {
    radius: fit.radius,
    centre: fit.centre,
    interval: [Math.max(0, fit.radius - half), fit.radius + half],
    residuals: fit.residuals,
    suspect: suspect === null ? [] : [suspect + 1],
    swapped,
    believable: scatter === null || scatter <= doubtTimes * readingError,
    scatter,
  }
}

const squares = ({ residuals }: CircleFit): number => residuals.reduce((sum, r) => sum + r * r, 0)

/** The point farthest from the circle through the others, measured by what they let expect; null where all belong. */
const suspectPoint = (points: readonly Point[], fit: CircleFit, readingError: number): number | null => {
  if (points.length < 5) return null
  const spare = points.length - 4
  const all = squares(fit)
  let [worst, found] = [0, -1]
  for (const [i, residual] of fit.residuals.entries()) {
    const own = (residual * residual) / Math.max(1e-9, 1 - fit.leverage[i]!)
    // what a reading is off is never less than a share of its stated error: else a lucky set of the others blames one
    const scatter = Math.max((all - own) / spare, (readingError / 3) ** 2)
    const times = Math.sqrt(Math.max(0, own) / scatter)
    if (times > worst) [worst, found] = [times, i]
  }
  return worst > suspectTimes ? found : null
}

/** Two neighbours whose heights were written into each other's line. */
const swappedPoints = (
  points: readonly Point[],
  fit: CircleFit,
  readingError: number,
): readonly [number, number] | null => {
  const spare = points.length - 3
  if (spare < 2 || squares(fit) <= spare * (doubtTimes * readingError) ** 2) return null
  let [best, found] = [swapShare * squares(fit), null as readonly [number, number] | null]
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!]
    const exchanged = points.map((p, k) =>
      k === i ? { x: a.x, y: b.y } : k === i + 1 ? { x: b.x, y: a.y } : p,
    )
    const again = fitCircle(exchanged)
    if (again === null) continue
    const left = squares(again)
    if (left < best && left <= spare * (doubtTimes * readingError) ** 2)
      [best, found] = [left, [i + 1, i + 2]]
  }
  return found
}
