import { degreesOf } from '../../geometry/degrees.ts'
import { inch } from '../../geometry/inch.ts'
import type { Point } from '../../geometry/point.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { showLength, type Units } from '../../length.ts'
import { measured } from '../check/offer.ts'

/** Marks from which a tape is read by mistake, mm. */
const falseZeros = [inch, 10, 100, 10 * inch] as const
/** What a tape's hook gives, mm. Common practice, no source. */
const hook = 2.5
/** A level that is out by more is no level, degrees. */
const mostLean = 3

/**
 * Heights are measured from the floor, where most ramps' curves, continued, run level. Where this one does not, what may be the
 * reason, in words; null where it does. `level`: the height at which the circle is level, mm; `keeps`: the design file takes it as the
 * tangent.
 */
export const zeroWords = (
  level: number,
  centre: Point,
  radius: number,
  readingError: number,
  keeps: boolean,
  units: Units,
): string | null => {
  const off = Math.abs(level)
  if (off <= Math.max(1, readingError)) return null
  const where = `the curve, continued, runs level ${measured(off, units)} ${level > 0 ? 'above' : 'below'} the zero of your heights`
  const orKeep = keeps ? ', or keep it as the tangent' : ''
  const zero = falseZeros.find((mark) => Math.abs(off - mark) <= 1.5 * readingError)
  if (zero !== undefined)
    return `${where}: was the tape read from its mark of ${showLength(zero, zero === 10 || zero === 100 ? 'mm' : 'in', { unit: true })}? Take ${measured(off, units)} ${level > 0 ? 'off' : 'more for'} each height${orKeep}`
  if (off <= hook) return `${where}: a tape's hook is 1 to 2 mm out; measure between two marks${orKeep}`
  const lean = leanOf(centre, radius)
  const leans = lean !== null && Math.abs(lean) <= mostLean
  const reasons = [
    ...(keeps ? ['the ramp may be built so (keep it as the tangent)'] : []),
    ...(leans ? [`the level was out by ${showDegrees(Math.abs(lean!))}`] : []),
    'the heights do not start at the floor',
  ]
  return `${where}: ${reasons.join(', or ')}`
}

/** By how much the floor line, turned about the zero of the readings, would touch the circle; degrees. */
const leanOf = ({ x, y }: Point, radius: number): number | null => {
  const away = Math.hypot(x, y)
  if (away < radius) return null
  const turn = Math.atan2(x, y) + Math.acos(radius / away)
  const other = Math.atan2(x, y) - Math.acos(radius / away)
  const least = Math.abs(turn) < Math.abs(other) ? turn : other
  return degreesOf(least)
}

/** Points that do not lie one behind the other along the floor, by their numbers from 1; most often lines in the wrong order. */
export const outOfOrder = (points: readonly Point[]): readonly number[] => {
  const rising = (points.at(-1)?.x ?? 0) >= (points[0]?.x ?? 0) ? 1 : -1
  return points.flatMap((point, i) => (i > 0 && (point.x - points[i - 1]!.x) * rising < 0 ? [i + 1] : []))
}
