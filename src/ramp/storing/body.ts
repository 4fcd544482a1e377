import { boxCorners } from '../../geometry/clip.ts'
import type { DeckTimber } from '../frame/deck-timbers.ts'
import { type Timber, timberCorners } from '../frame/timber.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import type { Part } from '../stored.ts'
import { circleFlanks, curveFlank, type Flank, lineFlank, polygonFlanks } from './flank.ts'

/** Whether a ramp's side could be solved: a stop elsewhere does not hinder. */
export const isWhole = (ramp: Quarter): ramp is SolvedQuarter =>
  ramp.transition !== null && ramp.side !== null && ramp.length !== null && ramp.deck !== null

export interface PartFlank {
  readonly flank: Flank
  readonly of: Part
}

const each = (of: Part, flanks: readonly Flank[]): readonly PartFlank[] =>
  flanks.map((flank) => ({ flank, of }))

/** The whole outline as it stands, without a run-out sheet; screws are sunk. */
export const bodyFlanks = (ramp: SolvedQuarter): readonly PartFlank[] => {
  const { transition, side, design, length } = ramp
  const { chamfer } = design
  const { curve, toe, heights } = transition
  const back = [
    { x: length - chamfer, y: 0 },
    { x: length, y: chamfer },
    { x: length, y: heights.frame },
  ] as const
  return [
    ...each({ kind: 'side' }, [
      ...lineFlank(toe, { x: 0, y: 0 }),
      ...curveFlank(curve, curve.toe, side.curveEnd, 'left'),
      ...lineFlank(back[0], back[1]),
      ...lineFlank(back[1], back[2]),
    ]),
    ...skinFlanks(ramp),
    ...pipeFlanks(ramp),
    ...boardFlanks(ramp),
    ...wheelFlanks(ramp),
  ]
}

/** Whether a timber stands low at the back, in the way of what is pushed in there. */
export const isLow = ({ role }: DeckTimber): boolean => role === 'back' || role === 'wheels'

/** What hangs in the room under a ramp, between its outermost sides, less what stands low at its back. */
export const shelterFlanks = (ramp: SolvedQuarter): readonly PartFlank[] => {
  const hang = (timber: Timber, number: number): readonly PartFlank[] =>
    each({ kind: 'stud', number }, polygonFlanks(timberCorners(timber)))
  return [
    ...ramp.studs.flatMap((stud, i) => hang(stud, i + 1)),
    ...ramp.deckTimbers.flatMap((timber, i) =>
      isLow(timber) ? [] : hang(timber, ramp.studs.length + i + 1),
    ),
    ...skinFlanks(ramp),
    ...pipeFlanks(ramp),
    ...boardFlanks(ramp),
  ]
}

const skinFlanks = ({ skin, transition: { curve } }: SolvedQuarter): readonly PartFlank[] =>
  skin.flatMap(({ layer, below, sheet, start, end }) => {
    if (end <= start) return []
    const [lower, upper] = [curve.offset(below), curve.offset(below + sheet.thickness)]
    return each({ kind: 'skin', number: layer }, [
      ...curveFlank(lower, start, end, 'right'),
      ...curveFlank(upper, start, end, 'left'),
      ...lineFlank(upper.point(start), lower.point(start)),
      ...lineFlank(lower.point(end), upper.point(end)),
    ])
  })

const pipeFlanks = ({ coping }: SolvedQuarter): readonly PartFlank[] =>
  coping ? each({ kind: 'pipe' }, circleFlanks(coping.centre, coping.outside / 2)) : []

const boardFlanks = ({ deckBoard, transition: { heights } }: SolvedQuarter): readonly PartFlank[] => {
  if (!deckBoard) return []
  const { from, length, sheet } = deckBoard
  const box = { x0: from, x1: from + length, y0: heights.frame, y1: heights.frame + sheet.thickness }
  return each({ kind: 'board' }, polygonFlanks(boxCorners(box)))
}

const wheelFlanks = ({ wheels, design }: SolvedQuarter): readonly PartFlank[] =>
  wheels ? each({ kind: 'wheels' }, circleFlanks(wheels.centre, design.wheels!.diameter / 2)) : []
