import type { Units } from '../../design/design.ts'
import type { Curve } from '../curve/curve.ts'
import type { Stud } from '../frame/stud.ts'
import { type FlatToCurve, meets, practice } from './skin-framing.ts'

/** No piece is narrower up the ramp, nor one seam nearer to another of the next layer where a stud was set for it. mm */
export const leastPiece = 100

/** Wood that takes the two rows of screws at a seam. */
export interface Seat {
  /** from the layer's toe end on the flat sheet */
  readonly at: number
  /** along the frame's curve */
  readonly up: number
  /** one, or two side by side with the seam on their joint */
  readonly studs: readonly [Stud] | readonly [Stud, Stud]
  /** one of them was set for a seam */
  readonly set: boolean
  /** where a seam of the next layer is so far off along the curve, the two have nothing to do with each other, mm */
  readonly free: number
}

/** Studs no farther apart than this are side by side, mm. */
const touching = 0.5

/** A stud that takes both rows alone is so thick, where they stay so far inside its edges; mm. */
export const thickAlone = (units: Units, inside: number): number => {
  const { gap, edge } = practice[units]
  return gap + 2 * (edge + inside)
}

/** The seats of a layer on studs in their order up the curve, its screws so far `inside` their edges; neither the first nor the last takes one, so that every piece lies on two. */
export const seatsIn = (
  curve: Curve,
  { placeAt, markOf }: FlatToCurve,
  units: Units,
  inside: number,
): ((studs: readonly Stud[]) => readonly Seat[]) => {
  const { gap, edge } = practice[units]
  const solve = (lower: Stud, upper: Stud): Seat | null => {
    const up = lower === upper ? lower.at : (lower.at + lower.width / 2 + upper.at - upper.width / 2) / 2
    const at = markOf({ ...lower, at: up })
    const takes = (side: -1 | 1, stud: Stud): boolean =>
      meets(curve, placeAt(at + side * (gap / 2 + edge)), stud, units, inside)
    if (!takes(-1, lower) || !takes(1, upper)) return null
    const set = lower.role === 'seam' || upper.role === 'seam'
    const studs: Seat['studs'] = lower === upper ? [lower] : [lower, upper]
    return { at, up, studs, set, free: leastPiece + lower.width }
  }
  const alone = new Map<Stud, Seat | null>()
  const pairs = new Map<Stud, Map<Stud, Seat | null>>()
  const on = (lower: Stud, upper: Stud): Seat | null => {
    const known = lower === upper ? alone : (pairs.get(lower) ?? new Map<Stud, Seat | null>())
    const found = known.get(upper)
    if (found !== undefined) return found
    if (lower !== upper) pairs.set(lower, known)
    const seat = solve(lower, upper)
    known.set(upper, seat)
    return seat
  }
  return (studs) => {
    const seats: Seat[] = []
    for (let i = 1; i < studs.length - 1; i++) {
      const [stud, next] = [studs[i]!, i + 2 < studs.length ? studs[i + 1]! : null]
      const beside = next && next.at - stud.at - (stud.width + next.width) / 2 <= touching
      const seat = on(stud, stud) ?? (beside ? on(stud, next) : null)
      if (seat) seats.push(seat)
    }
    return seats
  }
}
