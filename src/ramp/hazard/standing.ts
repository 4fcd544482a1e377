import type { DeckTimber } from '../frame/deck-timbers.ts'
import type { Stud } from '../frame/stud.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Side } from '../side/side.ts'
import type { Transition } from '../side/transition.ts'
import type { SkinLayer } from '../skin/skin.ts'
import type { Splice } from '../splice/splice.ts'

/** A ramp that can be sawn, as far as what is dangerous hangs on it. */
export interface Standing {
  readonly transition: Transition
  readonly side: Side
  readonly coping: SolvedCoping | null
  readonly studs: readonly Stud[]
  readonly deckTimbers: readonly DeckTimber[]
  readonly skin: readonly SkinLayer[]
  /** names of the ramps that store inside this one */
  readonly stored: readonly string[]
  /** where its sides are joined, once that is known */
  readonly splices?: readonly Splice[]
}
