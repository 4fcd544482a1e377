import type { Units } from '../../design/design.ts'
import type { Curve } from '../curve/curve.ts'
import type { Stud } from '../frame/stud.ts'
import { type FlatToCurve, insideStud, meets, practice } from './skin-framing.ts'

/** Wood that takes the two rows of screws at a seam. */
export interface Seat {
  /** from the layer's toe end on the flat sheet */
  readonly at: number
  /** along the frame's curve */
  readonly up: number
  /** one, or two side by side with the seam on their joint */
  readonly studs: readonly [Stud] | readonly [Stud, Stud]
}

/** Studs no farther apart than this are side by side, mm. */
const touching = 0.5

/** A stud that takes both rows alone is so thick, mm. */
export const thickAlone = (units: Units): number => {
  const { gap, edge } = practice[units]
  return gap + 2 * (edge + insideStud)
}

/** The seats of a layer on studs in their order up the curve; neither the first nor the last takes one, so that every piece lies on two. */
export const seatsIn = (
  curve: Curve,
  { placeAt, markOf }: FlatToCurve,
  units: Units,
): ((studs: readonly Stud[]) => readonly Seat[]) => {
  const { gap, edge } = practice[units]
  const on = (lower: Stud, upper: Stud): Seat | null => {
    const up = lower === upper ? lower.at : (lower.at + lower.width / 2 + upper.at - upper.width / 2) / 2
    const at = markOf({ ...lower, at: up })
    const takes = (side: -1 | 1, stud: Stud): boolean =>
      meets(curve, placeAt(at + side * (gap / 2 + edge)), stud, units)
    if (!takes(-1, lower) || !takes(1, upper)) return null
    return { at, up, studs: lower === upper ? [lower] : [lower, upper] }
  }
  const known = new Map<Stud, Seat | null>()
  const alone = (stud: Stud): Seat | null => {
    const found = known.get(stud)
    if (found !== undefined) return found
    const seat = on(stud, stud)
    known.set(stud, seat)
    return seat
  }
  return (studs) => {
    const inner = studs.slice(1, -1)
    return inner.flatMap((stud, i) => {
      const next = inner[i + 1]
      const beside = next && next.at - stud.at - (stud.width + next.width) / 2 <= touching
      const seat = alone(stud) ?? (beside ? on(stud, next) : null)
      return seat ? [seat] : []
    })
  }
}
