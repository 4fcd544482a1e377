import type { Units } from '../../../../length.ts'
import { runOutFree } from '../../../../ramp/beside/toe-step.ts'
import { stepLimit } from '../../../../ramp/check/practice.ts'
import type { Transition } from '../../../../ramp/side/transition.ts'

/** A lower strip is not sawn: the sheet gives that much by itself, mm. */
const leastStrip = 3

/** What stands under a run-out, mm: how far before the sides' front edge, and how high. */
export interface RunOutStrip {
  readonly before: number
  readonly high: number
}

/** Strips that hold up what a run-out bridges, evenly along it from the toe down; none where it is short or low. */
export const runOutStrips = (
  { face, level, bridge, toeStep }: Pick<Transition, 'face' | 'level' | 'bridge' | 'toeStep'>,
  units: Units,
): readonly RunOutStrip[] => {
  if (toeStep <= stepLimit || level.surface > stepLimit) return []
  const bays = Math.ceil(bridge / runOutFree(units) - 1e-6)
  return Array.from({ length: Math.max(0, bays - 1) }, (_, i) =>
    face.point(face.placeAtLength((-bridge * (i + 1)) / bays)),
  )
    .map(({ x, y }) => ({ before: -x, high: y }))
    .filter(({ high }) => high >= leastStrip)
}
