import type { Timber } from './timber.ts'

/** A timber under the skin: the middle of its face lies on the curve. */
export interface Stud extends Timber {
  /** along the curve from the toe corner to its middle, mm */
  readonly at: number
  readonly role: 'toe' | 'curve' | 'lip' | 'seam' | 'end' | 'inner'
}

/** Thinnest strip that is worth ripping, mm. */
export const leastRipped = 10

/** A stud on edge in the middle of a station along the curve, mm; null where it would leave the panel or meet one of these. */
export type Stand = (at: number, among: readonly Stud[]) => Stud | null
