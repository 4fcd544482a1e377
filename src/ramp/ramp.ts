import type { RampDesign } from '../design/design.ts'
import type { Check } from './check.ts'
import type { SolvedCoping } from './coping.ts'
import type { DeckBoard } from './deck-board.ts'
import type { DeckTimber } from './deck-timbers.ts'
import type { Pipe } from './holes.ts'
import type { LayerScrews } from './screws.ts'
import type { Side } from './side.ts'
import type { SkinLayer } from './skin.ts'
import type { LayerPlan } from './skin-plan.ts'
import type { Stud } from './studs.ts'
import type { Transition } from './transition.ts'

/** A quarter, as far as it could be solved: what is null has a `stop` that says why. Lengths mm, angles radians. */
export interface Ramp {
  readonly kind: 'quarter'
  readonly name: string
  readonly design: RampDesign
  /** thickness of the whole skin */
  readonly skinThickness: number
  readonly width: number
  /** of one stud between two sides */
  readonly studLength: number
  readonly transition: Transition | null
  /** the side's whole length along the floor */
  readonly length: number | null
  /** lip to back edge along the top */
  readonly deck: number | null
  readonly coping: SolvedCoping | null
  readonly side: Side | null
  /** under the skin, from toe to lip */
  readonly studs: readonly Stud[]
  /** behind the lip */
  readonly deckTimbers: readonly DeckTimber[]
  readonly skin: readonly SkinLayer[]
  /** how each layer of `skin` is laid, and what it is screwed with */
  readonly plans: readonly LayerPlan[]
  readonly screws: readonly LayerScrews[]
  /** the coping's own length, joints and holes */
  readonly pipe: Pipe | null
  /** behind the lip; null where the design has none */
  readonly deckBoard: DeckBoard | null
}

export interface SolvedDesign {
  readonly ramps: readonly Ramp[]
  readonly checks: readonly Check[]
}
