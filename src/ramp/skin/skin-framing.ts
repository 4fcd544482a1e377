import type { RampDesign, Sheet, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { same } from '../check/offer.ts'
import type { Curve } from '../curve/curve.ts'
import { screwGrip } from '../frame/screw-lengths.ts'
import type { Stud } from '../frame/stud.ts'
import type { Timber } from '../frame/timber.ts'
import { timberRun } from '../frame/timber-run.ts'
import type { SkinLayer } from './skin.ts'

/**
 * Common practice, no source, mm: the gap between sheets; a screw from its sheet's edge; the most from screw to screw in the
 * layers below and in the top one; a screw between studs from all timber; a seam across from one in the layer below.
 */
export const practice = {
  mm: { gap: 3, edge: 10.5, base: 250, top: 175, between: 25, stagger: 300 },
  in: {
    gap: inch / 8,
    edge: (7 * inch) / 16,
    base: 10 * inch,
    top: 7 * inch,
    between: inch,
    stagger: 12 * inch,
  },
} as const

/** How far a screw stays inside a stud's long edges, mm. */
export const insideStud = 3

/** The same where two rows bite one stud under a seam: nearer to an edge they split it. Common practice, no source. mm */
export const insideSeam = 10

/** What sheets are laid on. */
export interface Ground {
  readonly design: RampDesign
  readonly curve: Curve
  readonly studs: readonly Stud[]
  /** those that carry no skin, but that a screw may meet */
  readonly timbers: readonly Timber[]
  /** how far a sheet of a sort reaches up the ramp, and across it: on a curve its long side lies across */
  readonly panelOf: (sheet: Sheet) => Framing['panel']
  readonly units: Units
}

/** What the sheets of one layer are laid on. */
export interface Framing extends Ground {
  /** how far they reach */
  readonly panel: readonly [number, number]
}

/** Timbers in whose ends no screws keep off those from above, so that these stand so far off the middles of all walls; mm. */
export interface Crossed {
  /** indices among the studs, then those behind the lip */
  readonly timbers: readonly number[]
  readonly off: number
}

export const noneCrossed: Crossed = { timbers: [], off: 0 }

export const framingFor = (ground: Ground, sheet: Sheet): Framing => ({
  ...ground,
  panel: ground.panelOf(sheet),
})

/** From the flat sheet to the curve and back. */
export interface FlatToCurve {
  readonly placeAt: (at: number) => number
  readonly markOf: (stud: Stud) => number
}

export const flatToCurve = (curve: Curve, { below, sheet, start }: SkinLayer): FlatToCurve => {
  const middle = curve.offset(below + sheet.thickness / 2)
  const ahead = middle.lengthTo(start)
  return {
    placeAt: (at) => middle.placeAtLength(at + ahead),
    markOf: (stud) => middle.lengthTo(curve.placeAtLength(stud.at)) - ahead,
  }
}

/** Whether a screw at a place goes into a stud, off its edges and as deep as it should or as the stud is. */
export const meets = (
  curve: Curve,
  place: number,
  stud: Stud,
  units: Units,
  inside: number = insideStud,
): boolean => {
  const run = timberRun(curve, place, stud, inside)
  return run !== null && run.to >= Math.min(screwGrip[units], stud.depth) - same
}
