import type { Point } from '../geometry/point.ts'
import { rampParts } from '../ramp/hazard/masses.ts'
import type { SolvedQuarter } from '../ramp/ramp.ts'

/** Where a ramp hangs level: the middle of its usual weight, seen from the side. Screws, wheels and the run-out sheet are left out. */
export const balancePoint = (ramp: SolvedQuarter): Point => {
  const parts = rampParts(ramp.design, { ...ramp, stored: [] })
  const whole = parts.reduce((sum, { mass }) => sum + mass.usual, 0)
  const mean = (of: (p: Point) => number): number =>
    parts.reduce((sum, { mass, middle }) => sum + mass.usual * of(middle), 0) / whole
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) }
}
