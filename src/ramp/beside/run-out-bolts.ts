import type { Stock, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { same } from '../check/offer.ts'
import type { Quarter } from '../ramp.ts'
import { offWall } from '../skin/screw-rows.ts'
import { noneCrossed } from '../skin/skin-framing.ts'
import { heldAcross, runOutPieces, runOutScrew } from './run-out-sheet.ts'
import { runOutLap } from './toe-step.ts'

/** Across the thread, and the hole through sheet and skin. */
export const runOutBolt = { size: 'M5 (No. 10)', hole: '5.5 mm (7/32 in)' } as const

/**
 * Lengths as sold, head within, and what washer, nut and the end of the thread take: ISO 10642 for the lengths; washer 1 (ISO 7089),
 * nut 4.7 (ISO 4032), 1.3 over; in inches common practice, no source. mm
 */
const bolts = {
  mm: { sold: [12, 16, 20, 25, 30, 35, 40, 45, 50, 60], taken: 7 },
  in: { sold: [0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5].map((inches) => inches * inch), taken: 0.28 * inch },
} as const

/** What holds the upper end of a run-out to a skin that is too thin for a screw. Lengths mm. */
export interface RunOutBolts {
  /** from the sheet's upper end */
  readonly at: number
  /** from the ramp's left outer face */
  readonly across: readonly number[]
  readonly length: number
}

/** null where a screw holds it, or where there is no skin. */
export const runOutBolts = (
  ramp: Quarter,
  stock: Pick<Stock, 'panel' | 'panels'>,
  units: Units,
): RunOutBolts | null => {
  const pieces = runOutPieces(ramp, stock, units)
  if (!pieces || ramp.skinThickness <= 0 || ramp.studs.length === 0 || runOutScrew(ramp, units)) return null
  const { design, transition } = ramp
  const { sold, taken } = bolts[units]
  const through = pieces.sheet.thickness + ramp.skinThickness + taken
  const at = runOutLap(units) / 2
  const place = transition!.face.placeAtLength(at)
  return {
    at,
    across: heldAcross(ramp, place, offWall(design, noneCrossed, null), pieces.widths, units),
    length: sold.find((length) => length >= through - same) ?? sold.at(-1)!,
  }
}
