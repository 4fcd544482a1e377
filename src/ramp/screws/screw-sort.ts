import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'

export type ScrewUse =
  | 'skin'
  | 'deck board'
  | 'run-out'
  | 'run-out strips'
  | 'frame'
  | 'plates'
  | 'pipe'
  | 'pipe blocks'
  | 'wheels'

/** A wood screw but for its length: how thick it is as sold in mm and by its gauge, and what its head is like. */
interface ScrewSort {
  readonly mm: number
  readonly gauge: number
  readonly head: 'countersunk' | 'pan head'
}

/** Common practice, no source. */
const sheet: ScrewSort = { mm: 4.5, gauge: 8, head: 'countersunk' }
const timber: ScrewSort = { mm: 5, gauge: 10, head: 'countersunk' }
const plate: ScrewSort = { mm: 5, gauge: 10, head: 'pan head' }
/** Goes through the small hole, its head through the large one; a flat underside wedges no wall apart. */
const inPipe: ScrewSort = { mm: 4.5, gauge: 8, head: 'pan head' }

const sorts: Readonly<Record<ScrewUse, ScrewSort>> = {
  skin: sheet,
  'deck board': sheet,
  'run-out': sheet,
  'run-out strips': sheet,
  plates: sheet,
  pipe: inPipe,
  frame: timber,
  'pipe blocks': timber,
  wheels: plate,
}

export const screwHead = (use: ScrewUse): ScrewSort['head'] => sorts[use].head

/** Across the thread, mm; by gauge 0.060 in and 0.013 in for each number (ASME B18.6.1, from memory). */
export const screwDiameter = (use: ScrewUse, units: Units): number => {
  const { mm, gauge } = sorts[use]
  return units === 'mm' ? mm : (0.06 + 0.013 * gauge) * inch
}

/** `4.5 × 60`, `No. 8 × 2`: as it is sold, with its length as `show` says it. */
export const screwSize = (
  use: ScrewUse,
  length: number,
  units: Units,
  show: (mm: number) => string,
): string => {
  const { mm, gauge } = sorts[use]
  return `${units === 'mm' ? mm : `No. ${gauge}`} × ${show(length)}`
}
