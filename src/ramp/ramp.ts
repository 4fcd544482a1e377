import type { FlatDesign, QuarterDesign } from '../design/design.ts'
import type { Check } from './check/check.ts'
import type { Curve } from './curve/curve.ts'
import type { DeckTimber } from './frame/deck-timbers.ts'
import type { Pipe } from './frame/pipe.ts'
import type { Stud } from './frame/stud.ts'
import type { SolvedWheels } from './frame/wheels.ts'
import type { EndScrews } from './screws/end-screws.ts'
import type { SolvedCoping } from './side/coping.ts'
import type { Side } from './side/side.ts'
import type { Transition } from './side/transition.ts'
import type { DeckBoard } from './skin/deck-board.ts'
import type { Layer } from './skin/layer.ts'
import type { LipGroove } from './skin/lip-groove.ts'
import type { Splice } from './splice/splice.ts'
import type { Storing } from './stored.ts'

/** What every kind has; what a kind has none of is null or empty. Lengths mm, angles radians. */
interface RampOfAnyKind {
  readonly name: string
  /** thickness of the whole skin */
  readonly skinThickness: number
  readonly width: number
  /** of one stud between two sides */
  readonly studLength: number
  /** under the skin, from toe to lip or from end to end */
  readonly studs: readonly Stud[]
  /** from the studs up */
  readonly skin: readonly Layer[]
  /** behind the lip; none where there is none */
  readonly deckTimbers: readonly DeckTimber[]
  /** in the ends of each timber: of the studs, then of those behind the lip */
  readonly endScrews: readonly EndScrews[]
  readonly coping: SolvedCoping | null
  /** where the pieces of a side meet that no panel holds whole, from the toe; none where one does, or where none can be */
  readonly splices: readonly Splice[]
  /** the coping's own length, joints and holes; null without one */
  readonly pipe: Pipe | null
  /** behind the lip; null where the design has none */
  readonly deckBoard: DeckBoard | null
  /** null where the design has none */
  readonly wheels: SolvedWheels | null
}

/** A quarter, as far as it could be solved: what is null has a `stop` that says why. */
export interface Quarter extends RampOfAnyKind {
  readonly kind: 'quarter'
  readonly design: QuarterDesign
  readonly transition: Transition | null
  /** the side's whole length along the floor */
  readonly length: number | null
  /** lip to back edge along the top */
  readonly deck: number | null
  readonly side: Side | null
  /** what stands open at the lip without a pipe; null where nothing does */
  readonly lipGroove: LipGroove | null
}

/** A quarter of which nothing is open: what templates, tables and lists are made from. */
export interface SolvedQuarter extends Quarter {
  readonly transition: Transition
  readonly length: number
  readonly deck: number
  readonly side: Side
}

/** A flat: straight cuts only. */
export interface Flat extends RampOfAnyKind {
  readonly kind: 'flat'
  readonly design: FlatDesign
  readonly length: number
  readonly heights: { readonly frame: number; readonly surface: number }
  /** the upper edge of its sides, from end to end */
  readonly curve: Curve
}

export type Ramp = Quarter | Flat
export type SolvedRamp = SolvedQuarter | Flat

/** A design that can be made: no check says stop. */
export interface WholeDesign {
  readonly stopped: false
  readonly ramps: readonly SolvedRamp[]
  /** every ramp that is kept in another */
  readonly storings: readonly Storing[]
  readonly checks: readonly Check[]
}

/** A ramp as if the design had no other, and nothing to be said of it. */
export const aloneAs = (ramp: SolvedRamp): WholeDesign => ({
  stopped: false,
  ramps: [ramp],
  storings: [],
  checks: [],
})

/** A design with a stop, as far as it could be solved: there are figures of it and nothing else. */
export interface StoppedDesign {
  readonly stopped: true
  readonly ramps: readonly Ramp[]
  readonly checks: readonly Check[]
}

export type SolvedDesign = WholeDesign | StoppedDesign
