import type { Prices, Sheet } from '../design.ts'
import type { Place } from '../problem.ts'

/** A value of the file, read by its row: lengths are mm. */
export type Entry =
  | { readonly kind: 'text'; readonly text: string; readonly place: Place }
  | { readonly kind: 'word'; readonly word: string; readonly place: Place }
  | { readonly kind: 'count'; readonly count: number; readonly place: Place }
  | { readonly kind: 'length'; readonly mm: number; readonly place: Place }
  /** one angle, or the two ends of a range, least first */
  | { readonly kind: 'angles'; readonly degrees: readonly number[]; readonly place: Place }
  | { readonly kind: 'lengths'; readonly mm: readonly number[]; readonly place: Place }
  | { readonly kind: 'sheets'; readonly sheets: readonly Sheet[]; readonly place: Place }
  | { readonly kind: 'prices'; readonly prices: Prices; readonly place: Place }
  | { readonly kind: 'list'; readonly items: readonly Entry[]; readonly place: Place }
  | EntryMap
  /** said, but wrong; the problem is reported already */
  | { readonly kind: 'bad'; readonly place: Place }

export interface EntryMap {
  readonly kind: 'map'
  readonly entries: ReadonlyMap<string, Entry>
  /** of the keys themselves, where they were written */
  readonly keys: ReadonlyMap<string, Place>
  readonly place: Place
}

export const emptyMap = (place: Place): EntryMap => ({
  kind: 'map',
  entries: new Map(),
  keys: new Map(),
  place,
})
