import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { same } from '../check/offer.ts'
import { stepLimit } from '../check/practice.ts'
import { screwGrip, screwWithin, usualAtLeast } from '../frame/screw-lengths.ts'
import type { Quarter } from '../ramp.ts'
import type { Transition } from '../side/transition.ts'
import { runOutFree } from './toe-step.ts'

/** A lower strip is not sawn: the sheet gives that much by itself, so before the floor more than `runOutFree` hangs, by less than this; mm. */
const leastStrip = 3

/** A lower strip splits at a screw; common practice, no source. mm */
export const screwedStrip = { mm: 12, in: inch / 2 } as const

/** From one short piece between strips to the next at most; common practice, no source. mm */
const piecesApart = { mm: 600, in: 24 * inch } as const

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

/** How the strips of a ramp hold together: short pieces in each gap, from the sides on. */
export interface StripJoints {
  readonly strips: readonly RunOutStrip[]
  /** short pieces in one gap */
  readonly pieces: number
  /** of all screws through a strip, one into each end of a piece, how many and how long, mm; null where all strips are glued */
  readonly screws: { readonly count: number; readonly length: number } | null
  /** whether some are too low for one */
  readonly glued: boolean
}

/** null where nothing is packed; the strips are as thick as the sides. */
export const stripJoints = ({ design, transition }: Quarter, units: Units): StripJoints | null => {
  const strips = design.runOut.kind === 'sheet' && transition ? runOutStrips(transition, units) : []
  if (strips.length === 0) return null
  const pieces = 1 + Math.ceil((design.width - same) / piecesApart[units])
  const { thickness } = design.sides
  // they get lower from the sides on: what is screwed comes first
  const screwed = strips.filter(({ high }) => high >= screwedStrip[units])
  const gaps = screwed.slice(1).map(({ before }, i) => before - screwed[i]!.before)
  const usual = usualAtLeast(thickness + screwGrip[units], units)
  // two that come from both ends do not meet
  const half = screwWithin((Math.min(...gaps) + thickness) / 2, units)
  return {
    strips,
    pieces,
    screws:
      screwed.length > 0
        ? {
            count: pieces * (1 + 2 * gaps.length),
            length: gaps.length > 0 && half !== null ? Math.min(usual, half) : usual,
          }
        : null,
    glued: screwed.length < strips.length,
  }
}
