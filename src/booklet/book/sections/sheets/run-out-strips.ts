import { inch } from '../../../../geometry/inch.ts'
import type { Units } from '../../../../length.ts'
import { runOutFree } from '../../../../ramp/beside/toe-step.ts'
import { same } from '../../../../ramp/check/offer.ts'
import { stepLimit } from '../../../../ramp/check/practice.ts'
import type { Transition } from '../../../../ramp/side/transition.ts'

/** A lower strip is not sawn: the sheet gives that much by itself, so before the floor more than `runOutFree` hangs, by less than this; mm. */
const leastStrip = 3

/** A lower strip splits at a screw; common practice, no source. mm */
export const screwedStrip = { mm: 12, in: inch / 2 } as const

/** What stands under a run-out, mm: how far before the sides' front edge, and how high. */
export interface RunOutStrip {
  readonly before: number
  readonly high: number
}

/** Strips that hold up what a run-out bridges, evenly along it from the toe down to where it is low; none where it is short or low. */
export const runOutStrips = (
  { face, level, bridge, toeStep }: Pick<Transition, 'face' | 'level' | 'bridge' | 'toeStep'>,
  units: Units,
): readonly RunOutStrip[] => {
  if (toeStep <= stepLimit + same || level.surface > stepLimit + same) return []
  const bays = Math.ceil(bridge / runOutFree(units) - 1e-6)
  return Array.from({ length: Math.max(0, bays - 1) }, (_, i) =>
    face.point(face.placeAtLength((-bridge * (i + 1)) / bays)),
  )
    .map(({ x, y }) => ({ before: -x, high: y }))
    .filter(({ high }) => high >= leastStrip)
}
