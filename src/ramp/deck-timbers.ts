import type { QuarterDesign, Units } from '../design/design.ts'
import { boxCorners } from '../geometry/clip.ts'
import { convexOverlap } from '../geometry/overlap.ts'
import type { Point } from '../geometry/point.ts'
import { type Finding, note } from './check.ts'
import type { SolvedCoping } from './coping.ts'
import { listed, measured, same } from './offer.ts'
import type { Side } from './side.ts'
import type { Stud } from './studs.ts'
import { type Timber, timberCorners } from './timber.ts'
import type { Transition } from './transition.ts'

/** A timber that carries no skin: under the pipe, behind it, under the deck board, in the back bottom corner. */
export interface DeckTimber extends Timber {
  readonly role: 'pipe' | 'backing' | 'deck' | 'back'
}

/**
 * The timbers behind the lip, each where it fits in the panel and meets none of the others: the pipe's own first, then the
 * backing behind it, then upright ones at the deck's spacing, the last flush with the back edge. One that has no room is laid
 * flat or moved.
 */
export const solveDeckTimbers = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  side: Side,
  studs: readonly Stud[],
  units: Units,
): { readonly timbers: readonly DeckTimber[]; readonly findings: readonly Finding[] } => {
  const [thin, wide] = [Math.min(...ramp.studs.section), Math.max(...ramp.studs.section)]
  const top = side.height
  const wall = side.edges.find((edge) => edge.name === 'top')!.path.pieces[0]!.to.x
  const timber = (role: DeckTimber['role'], lies: DeckTimber['lies'], x: number, y: number): DeckTimber => {
    const upright = lies === 'edge'
    return { role, lies, x, y, angle: 0, width: upright ? thin : wide, depth: upright ? wide : thin }
  }
  const findings: Finding[] = []
  const timbers: DeckTimber[] = []
  const fits = (candidate: DeckTimber): boolean =>
    insidePanel(timberCorners(candidate), transition, side, ramp.chamfer) &&
    (!coping || convexOverlap(timberCorners(candidate), notchBox(coping, side)) <= same) &&
    [...studs, ...timbers].every(
      (other) => convexOverlap(timberCorners(candidate), timberCorners(other)) <= same,
    )
  const add = (...ways: readonly DeckTimber[]): boolean => {
    const found = ways.find(fits)
    if (found) timbers.push(found)
    return found !== undefined
  }

  if (coping) {
    const r = coping.outside / 2
    const floor = coping.centre.y - r
    const right = coping.seat === 'square' ? coping.centre.x + r : coping.centre.x + wide / 2
    const held = add(
      timber('pipe', 'flat', right - wide / 2, floor),
      timber('pipe', 'edge', coping.centre.x, floor),
      timber('pipe', 'edge', right - thin / 2, floor),
    )
    // the lip stud lies right under the notch and takes the pipe's screws as well
    if (!held && !studs.some((stud) => stud.role === 'lip'))
      findings.push(
        note(
          'pipe-timber',
          'no timber fits under the pipe; block under it between the sides where its screws go',
        ),
      )
  }
  if (ramp.deckBoard) {
    const first = wall + thin / 2
    const last = side.length - thin / 2
    const lost: number[] = []
    const moves: string[] = []
    /** Upright at its place, else flat there, else upright at the nearest place within half a spacing. */
    const place = (role: 'backing' | 'deck', x: number, flat = x): void => {
      if (add(timber(role, 'edge', x, top), timber(role, 'flat', flat, top))) return
      const moved = Array.from({ length: Math.floor(ramp.studs.deck / 2) }, (_, i) => [x + i + 1, x - i - 1])
        .flat()
        .map((to) => timber(role, 'edge', to, top))
        .find(fits)
      if (!moved) lost.push(x)
      else {
        timbers.push(moved)
        moves.push(`${measured(x, units)} to ${measured(moved.x, units)}`)
      }
    }
    place('backing', first, wall + wide / 2)
    for (let x = first + ramp.studs.deck; x < last - thin; x += ramp.studs.deck) place('deck', x)
    if (last - first >= thin) place('deck', last, side.length - wide / 2)
    if (moves.length > 0)
      findings.push(
        note(
          'deck-timber',
          `timbers under the deck board moved to stay in the panel and clear of others: ${moves.join(', ')} behind the toe`,
        ),
      )
    if (lost.length > 0)
      findings.push(
        note(
          'deck-timber',
          `no timber fits under the deck board within half a spacing of ${listed(lost, units)} behind the toe: it would meet the curve or another`,
        ),
      )
  }
  const back = side.length - ramp.chamfer
  add(timber('back', 'flat', back - wide / 2, thin), timber('back', 'edge', back - thin / 2, wide))
  return { timbers, findings }
}

/** What the notch takes of the panel, as a box. */
const notchBox = ({ centre, outside }: SolvedCoping, { height }: Side): readonly Point[] => {
  const r = outside / 2
  const low = centre.y - r
  return boxCorners({ x0: centre.x - r, y0: low, x1: centre.x + r, y1: Math.max(height, low) })
}

const insidePanel = (
  corners: readonly Point[],
  { curve }: Transition,
  side: Side,
  chamfer: number,
): boolean =>
  corners.every(
    (p) =>
      p.x >= -same &&
      p.y >= -same &&
      p.x <= side.length + same &&
      p.y <= side.height + same &&
      p.x - p.y <= side.length - chamfer + same &&
      (p.x >= curve.point(curve.lip).x || curve.nearest(p).distance >= -same),
  )
