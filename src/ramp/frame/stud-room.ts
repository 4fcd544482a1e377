import type { QuarterDesign } from '../../design/design.ts'
import { thinWide } from '../../design/section.ts'
import { same } from '../check/offer.ts'
import type { Curve } from '../curve/curve.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Transition } from '../side/transition.ts'
import type { Stud } from './stud.ts'
import { timberCorners, timberDistance, timberReach } from './timber.ts'

/** The panel as far as studs meet its edges. */
export interface StudPanel {
  /** where the cut curve ends at its top */
  readonly curveEnd: number
  readonly length: number
}

/** Where studs of a section may lie in a side. */
export interface StudRoom {
  readonly ramp: QuarterDesign
  readonly transition: Transition
  readonly coping: SolvedCoping | null
  readonly curve: Curve
  /** of the panel, and of the cut curve along it, mm */
  readonly length: number
  readonly end: number
  /** the section's two sides, mm */
  readonly thin: number
  readonly wide: number
  /** a stud whose middle lies so far up the curve, mm; of the full section unless told how deep */
  readonly place: (at: number, lies: Stud['lies'], role: Stud['role'], depth?: number) => Stud
  /** how far it sticks out of the panel's front, bottom, back or chamfer, mm; 0 or less when it is inside */
  readonly outside: (stud: Stud) => number
  /** whether it lies in the panel, below the curve's end and clear of the pipe */
  readonly fits: (stud: Stud) => boolean
  /** a stud of the full section; null where it does not fit or meets one of these */
  readonly clear: (at: number, lies: Stud['lies'], role: Stud['role'], among: readonly Stud[]) => Stud | null
}

export const studRoom = (
  ramp: QuarterDesign,
  transition: Transition,
  coping: SolvedCoping | null,
  { curveEnd, length }: StudPanel,
): StudRoom => {
  const { curve } = transition
  const end = curve.lengthTo(curveEnd)
  const [thin, wide] = thinWide(ramp.studs.section)
  const place: StudRoom['place'] = (at, lies, role, depth = lies === 'flat' ? thin : wide) => {
    const here = curve.placeAtLength(at)
    const { x, y } = curve.point(here)
    return { at, x, y, angle: curve.slope(here), lies, role, width: lies === 'flat' ? wide : thin, depth }
  }
  const outside = (stud: Stud): number =>
    Math.max(
      timberReach(stud, -1, 0),
      timberReach(stud, 0, -1),
      timberReach(stud, 1, 0) - length,
      (timberReach(stud, 1, -1) - (length - ramp.chamfer)) * Math.SQRT1_2,
    )
  const fits = (stud: Stud): boolean =>
    stud.at + stud.width / 2 <= end + same && outside(stud) <= same && (!coping || clearsPipe(stud, coping))
  const clear: StudRoom['clear'] = (at, lies, role, among) => {
    const width = lies === 'flat' ? wide : thin
    for (const other of among) if (Math.abs(at - other.at) < (width + other.width) / 2 - same) return null
    const stud = place(at, lies, role)
    return fits(stud) ? stud : null
  }
  return { ramp, transition, coping, curve, length, end, thin, wide, place, outside, fits, clear }
}

/** Below the notch's floor, or nowhere nearer to the pipe's middle than its radius. */
const clearsPipe = (stud: Stud, { centre, outside }: SolvedCoping): boolean => {
  const r = outside / 2
  if (timberCorners(stud).every((p) => p.y <= centre.y - r + same)) return true
  return timberDistance(stud, centre) >= r - same
}
