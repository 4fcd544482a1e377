import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Draft } from '../check/check.ts'
import { same } from '../check/offer.ts'
import type { DeckTimber } from '../frame/deck-timbers.ts'
import { spanFindings } from '../frame/span.ts'
import type { Stud } from '../frame/stud.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Side } from '../side/side.ts'
import type { Transition } from '../side/transition.ts'
import { boardFront } from '../skin/deck-board.ts'
import type { SkinLayer } from '../skin/skin.ts'
import { boardLoadFindings, skinLoadFindings } from './break-through.ts'

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
}

/** What is dangerous or foolish about a ramp that can be drawn and sawn, and not `said` already. */
export const hazardFindings = (
  design: QuarterDesign,
  ramp: Standing,
  said: readonly Draft[],
  units: Units,
): readonly Draft[] => {
  const { transition, side, coping, studs, deckTimbers, skin, stored } = ramp
  const { curve } = transition
  const ends = skin.filter(({ length }) => length > same).map(({ end }) => curve.lengthTo(end))
  const warned = (id: string): boolean => said.some((other) => other.id === id && other.level === 'warn')
  const along = {
    from: 0,
    to: Math.max(0, ...ends),
    curveEnd: curve.lengthTo(side.curveEnd),
    known: { toe: warned('stud-toe'), lip: warned('stud-lip') },
  }
  const board = { from: boardFront(coping, transition.run), to: side.length }
  return [
    ...(ends.length > 0 ? skinLoadFindings(design, studs, along, units) : []),
    ...boardLoadFindings(design, deckTimbers, board, units),
    ...spanFindings(design, units, undefined, stored),
  ]
}
