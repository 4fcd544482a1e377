import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinWide } from '../../design/section.ts'
import { type Finding, note } from '../check/check.ts'
import { listed, measured } from '../check/offer.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Side } from '../side/side.ts'
import type { Transition } from '../side/transition.ts'
import { aside } from './aside.ts'
import { airToLip, apart, cornersApart, insidePanel, notchBox, pipeTimbers } from './pipe-timber.ts'
import type { Stud } from './stud.ts'
import { type Timber, timberCorners } from './timber.ts'
import type { SolvedWheels } from './wheels.ts'

/** A timber that carries no skin: under the pipe, behind it, under the deck board, in the back bottom corner, under wheels. */
export interface DeckTimber extends Timber {
  readonly role: 'pipe' | 'backing' | 'deck' | 'back' | 'wheels'
}

/** What a timber behind the lip is for, on a ramp with or without a pipe. */
export const roleWords = (
  role: DeckTimber['role'],
  { coping }: { readonly coping: SolvedCoping | null },
): string => {
  switch (role) {
    case 'pipe':
      return 'under the pipe'
    case 'backing':
      return coping ? 'backing behind the pipe' : 'backing behind the lip'
    case 'deck':
      return 'under the deck board'
    case 'back':
      return 'back bottom corner'
    case 'wheels':
      return 'for the wheels'
  }
}

/** Less air needs no packing, mm. */
const touching = 1

/**
 * The timbers behind the lip, each where it fits in the panel and meets none of the others: the pipe's own first, then the
 * backing behind it, then upright ones no farther apart than the deck's spacing and evenly, the last flush with the back edge. One that has no room is laid
 * flat or moved.
 */
export const solveDeckTimbers = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  side: Side,
  studs: readonly Stud[],
  wheels: SolvedWheels | null,
  units: Units,
): { readonly timbers: readonly DeckTimber[]; readonly findings: readonly Finding[] } => {
  const rolling = wheels ? [{ ...wheels.timber, role: 'wheels' as const }] : []
  const bench: Bench = { timbers: [], room: roomFor(ramp, transition, coping, side, [...studs, ...rolling]) }
  const findings: Finding[] = []
  const ways = coping ? pipeTimbers(ramp, coping).map((own) => ({ ...own, role: 'pipe' as const })) : []
  if (coping && !put(bench, ...ways)) findings.push(...pipeFindings(ramp, coping, studs, units))
  if (ramp.deckBoard) findings.push(...putUnderBoard(bench, ramp, side, units))
  const [thin, wide] = thinWide(ramp.studs.section)
  const back = side.length - ramp.chamfer
  put(
    bench,
    timber(ramp, 'back', 'flat', back - wide / 2, thin),
    timber(ramp, 'back', 'edge', back - thin / 2, wide),
  )
  return { timbers: [...bench.timbers, ...rolling], findings }
}

/** The timbers that are put in one by one, and whether another finds room beside them. */
interface Bench {
  readonly timbers: DeckTimber[]
  readonly room: (candidate: DeckTimber, timbers: readonly DeckTimber[]) => boolean
}

const roomFor = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  side: Side,
  others: readonly Timber[],
): Bench['room'] => {
  const panel = { length: side.length, chamfer: ramp.chamfer }
  return (candidate, timbers) =>
    insidePanel(candidate, transition, panel) &&
    (!coping || cornersApart(timberCorners(candidate), notchBox(coping, side.height))) &&
    [...timbers, ...others].every((other) => apart(candidate, other))
}

/** The first of its ways that has room; false where none has. */
const put = ({ timbers, room }: Bench, ...ways: readonly DeckTimber[]): boolean => {
  const found = ways.find((way) => room(way, timbers))
  if (found) timbers.push(found)
  return found !== undefined
}

/** `x` of its middle, `y` of its upper face, mm. */
const timber = (
  { studs: { section } }: QuarterDesign,
  role: DeckTimber['role'],
  lies: DeckTimber['lies'],
  x: number,
  y: number,
): DeckTimber => {
  const [thin, wide] = thinWide(section)
  const upright = lies === 'edge'
  return { role, lies, x, y, angle: 0, width: upright ? thin : wide, depth: upright ? wide : thin }
}

/** Backing and spaced timbers under the deck board; what is said of those that moved or have no room. */
const putUnderBoard = (bench: Bench, ramp: QuarterDesign, side: Side, units: Units): readonly Finding[] => {
  const { section, deck: every } = ramp.studs
  const [thin, wide] = thinWide(section)
  const top = side.height
  const wall = side.edges.find((edge) => edge.name === 'top')!.path.pieces[0]!.to.x
  const [first, last] = [wall + thin / 2, side.length - thin / 2]
  const lost: number[] = []
  const moves: string[] = []
  /** Upright at its place, else flat there, else upright at the nearest place within half a spacing. */
  const place = (role: 'backing' | 'deck', x: number, flat = x): void => {
    const upright = (at: number): DeckTimber => timber(ramp, role, 'edge', at, top)
    if (put(bench, upright(x), timber(ramp, role, 'flat', flat, top))) return
    const moved = aside(x, every / 2, (at) => (put(bench, upright(at)) ? at : null))
    if (moved === null) lost.push(x)
    else moves.push(`${measured(x, units)} to ${measured(moved, units)}`)
  }
  place('backing', first, wall + wide / 2)
  const bays = Math.max(1, Math.ceil((last - first) / every - 1e-9))
  for (let i = 1; i < bays; i++) place('deck', first + ((last - first) * i) / bays)
  if (last - first >= thin) place('deck', last, side.length - wide / 2)
  return [
    ...(moves.length > 0
      ? [
          note(
            'deck-timber',
            `timbers under the deck board moved to stay in the panel and clear of others: ${moves.join(', ')} behind the toe`,
          ),
        ]
      : []),
    ...(lost.length > 0
      ? [
          note(
            'deck-timber',
            `no timber fits under the deck board within half a spacing of ${listed(lost, units)} behind the toe: it would meet the curve or another`,
          ),
        ]
      : []),
  ]
}

/** What holds a pipe without a timber of its own: the lip stud, or blocks. */
const pipeFindings = (
  ramp: QuarterDesign,
  coping: SolvedCoping,
  studs: readonly Stud[],
  units: Units,
): readonly Finding[] => {
  const air = airToLip(coping, studs, ramp, units)
  if (air !== null && air < touching) return []
  return [
    note(
      'pipe-timber',
      air === null
        ? `no timber of this section fits under the pipe: where its screws go, cut blocks to fill what is free under the notch's floor, and fix them to ${studs.some(({ role }) => role === 'lip') ? 'the last stud' : 'the sides'}`
        : `no timber of its own fits under the pipe: its screws go into the last stud, ${measured(air, units)} under the notch's floor; pack that: its screws reach through`,
    ),
  ]
}
