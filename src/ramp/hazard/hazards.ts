import type { QuarterDesign, Units } from '../../design/design.ts'
import type { Draft } from '../check/check.ts'
import { same } from '../check/offer.ts'
import { spanFindings } from '../frame/span.ts'
import { boardFront } from '../skin/deck-board.ts'
import { tipFindings } from './balance.ts'
import { boardLoadFindings, skinLoadFindings } from './break-through.ts'
import type { Standing } from './standing.ts'
import { studGapFindings } from './stud-gap.ts'

/** Ids of the checks below. */
export const hazards: readonly string[] = [
  'tips',
  'pushed-back',
  'skin-load',
  'skin-free',
  'stud-gap',
  'board-load',
  'board-free',
  'span',
]

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
    ...tipFindings(design, ramp, units),
    ...(ends.length > 0 ? skinLoadFindings(design, studs, along, units) : []),
    ...studGapFindings(design, studs, units),
    ...boardLoadFindings(design, deckTimbers, board, units),
    ...spanFindings(design, units, undefined, stored),
  ]
}
