import type { Units } from '../../design/design.ts'
import { apart, holdsPipe, insideEdge, insidePanel, lipRoom, pipeTimbers } from './pipe-timber.ts'
import type { Stud } from './stud.ts'
import type { StudRoom } from './stud-room.ts'

/** Flat, its upper edge at the end of the curve, lowered by no more than it must, or than gives the pipe its timber. */
export const solveLipStud = (
  { ramp, transition, coping, length, wide, end, place, fits }: StudRoom,
  toe: Stud | null,
  units: Units,
): Stud | null => {
  const at = (down: number): Stud | null => {
    const stud = place(end - wide / 2 - down, 'flat', 'lip')
    const clear = !toe || stud.at - toe.at >= (wide + toe.width) / 2
    return stud.at > 0 && fits(stud) && clear ? stud : null
  }
  const all = Array.from({ length: Math.floor(ramp.studs.every / 2) + 1 }, (_, down) => down)
  const from = all.find((down) => at(down) !== null)
  if (from === undefined) return null
  const highest = at(from)!
  if (!coping || holdsPipe(coping, highest, ramp, units)) return highest
  /** how far it comes down for a timber whose screws stay so far inside it */
  const lowered = (inside: number): number | undefined => {
    // the one farthest back has room wherever one nearer has
    const ways = pipeTimbers(ramp, coping, inside)
    const own = [...ways.slice(0, 1), ...ways.slice(-1)].filter((timber) =>
      insidePanel(timber, transition, { length, chamfer: ramp.chamfer }),
    )
    const hasRoom = (stud: Stud | null): boolean => stud !== null && own.some((timber) => apart(timber, stud))
    return all.find((down) => down >= from && down <= from + lipRoom && hasRoom(at(down)))
  }
  const lower = lowered(insideEdge.wanted) ?? lowered(insideEdge.least)
  return lower === undefined ? highest : at(lower)
}
