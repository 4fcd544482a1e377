import type { Units } from '../../design/design.ts'
import { bisect } from '../../geometry/bisect.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, note } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import type { Stud } from './stud.ts'
import type { StudRoom } from './stud-room.ts'

/** From where a stud of the full section fits, as words; nothing where it fits nowhere up the curve. */
export const fullFrom = (
  { curve, end, place, outside }: StudRoom,
  lies: Stud['lies'],
  at: number,
  units: Units,
): string => {
  const spill = (where: number): number => outside(place(where, lies, 'curve')) - same / 2
  if (spill(at) <= 0 || spill(end) >= 0) return ''
  const { x } = curve.point(curve.placeAtLength(bisect(spill, at, end)))
  return `; one of the full section fits${lies === 'edge' ? ' on edge' : ''} from ${offer(units).atLeast(x)} behind the toe`
}

/** Those too deep on edge, what each may be ripped to instead, and from where a full one fits. */
export const flatStuds = (room: StudRoom, flat: readonly number[], units: Units): Draft => {
  const { thin, wide, place, outside } = room
  const stands = flat.map((at) => {
    const spill = (depth: number): number => outside(place(at, 'edge', 'curve', depth)) - same / 2
    const depth = spill(thin) < 0 && spill(wide) > 0 ? bisect(spill, thin, wide) : 0
    const ripped = depth > thin + 1 ? ` (or on edge, ripped to ${offer(units).atMost(depth)})` : ''
    return `${measured(at, units)} up the curve${ripped}`
  })
  return note(
    'stud-outside',
    `too deep to stand on edge where the panel is thin, so flat: the stud${flat.length === 1 ? '' : 's'} ${wordList(stands)}${fullFrom(room, 'edge', flat[0]!, units)}`,
  )
}
