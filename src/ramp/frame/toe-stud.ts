import type { Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { type Draft, note, type Trial, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { firstThat, toeKey } from '../check/remedy.ts'
import { told } from '../check/told.ts'
import { leastRipped, type Stud } from './stud.ts'
import { fullFrom } from './stud-depth.ts'
import type { StudRoom } from './stud-room.ts'
import { timberCorners } from './timber.ts'

/** What an offered toe may be higher than asked for, and leaves to spare, mm. */
const toeRoom = 2

/** Flat and flush with the toe, moved up by the least amount that fits, else ripped; null where nothing fits. */
export const solveToeStud = (
  room: StudRoom,
  units: Units,
): { readonly stud: Stud | null; readonly findings: readonly Draft[] } => {
  const { ramp, thin, wide, end, place, outside, fits } = room
  const overFront = (at: number): number => {
    const [upper, lower] = timberCorners(place(at, 'flat', 'toe'))
    return -Math.min(upper!.x, lower!.x)
  }
  // a curve that starts nearly upright never comes clear of the front
  const flush = overFront(wide) < 0 ? bisect(overFront, 0, wide) : wide / 2
  const first = place(flush, 'flat', 'toe')
  const last = Math.min(flush + ramp.studs.every / 2, end - wide / 2)
  const moved = (): Stud | null => {
    if (last <= flush || outside(first) <= same || outside(place(last, 'flat', 'toe')) > 0) return null
    return place(
      bisect((at) => outside(place(at, 'flat', 'toe')), flush, last),
      'flat',
      'toe',
    )
  }
  const ripped = (): Stud | null => {
    const spill = (depth: number): number => outside(place(flush, 'flat', 'toe', depth)) - same / 2
    const depth = spill(0) < 0 && spill(thin) > 0 ? bisect(spill, 0, thin) : 0
    return depth >= leastRipped ? place(flush, 'flat', 'toe', depth) : null
  }
  const stud = [() => first, moved, ripped].map((way) => way()).find((found) => found && fits(found))
  if (!stud) return { stud: null, findings: [noToeStud(room, higherToe(room, first), units)] }
  if (stud === first) return { stud, findings: [] }
  const how =
    stud.depth < thin
      ? `is ripped to ${measured(stud.depth, units)} thick to lie in the toe${fullFrom(room, 'flat', flush, units)}`
      : `does not fit flush with the toe; it lies ${measured(stud.at - flush, units)} further up`
  return { stud, findings: [note('stud-toe', `the first stud ${how}`)] }
}

/** A higher toe under which the first would fit, if the floor is what is in the way and the rest of the curve has room. */
const higherToe = (
  { ramp, transition, coping, curve, wide, place, outside, fits }: StudRoom,
  first: Stud,
): number | null => {
  const toe = ramp.toe + outside(first)
  const start = curve.placeAtHeight(toe + toeRoom)
  if (start === null || -Math.min(...timberCorners(first).map((p) => p.y)) < outside(first)) return null
  const stud = place(curve.lengthTo(start) + wide / 2, 'flat', 'toe')
  const seat = coping ? coping.centre.y - coping.outside / 2 : transition.heights.frame
  const low = timberCorners(stud).every((p) => p.y < seat - toeRoom)
  return low && fits({ ...stud, at: stud.at + toeRoom }) ? toe : null
}

const noToeStud = ({ ramp }: StudRoom, toe: number | null, units: Units): Draft =>
  warn('stud-toe', (trial: Trial) => {
    const higher = firstThat(trial, ramp, toeKey, toe ?? ramp.toe, 1, units)
    return higher === null
      ? toe === null
        ? 'no stud fits in the toe: it would leave the panel or meet the notch; the curve is too short, or starts too steep, for this section'
        : 'no stud fits in the toe: it is too low for this section, and no higher one was found that stops nothing else; take thinner studs'
      : told`no stud fits in the toe; a toe of ${higher} takes one laid flat`
  })
