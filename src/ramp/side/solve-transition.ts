import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Draft } from '../check/check.ts'
import { solveCircle } from './circle-transition.ts'
import type { Transition } from './transition.ts'

/** The curve of a quarter, with the findings about it; null where there is none. */
export const solveTransition = (
  ramp: QuarterDesign,
  units: Units,
): { readonly transition: Transition | null; readonly findings: readonly Draft[] } => {
  if ('circle' in ramp.transition) return solveCircle(ramp, units)
  return ramp.transition satisfies never
}
