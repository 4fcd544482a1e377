import type { Place } from '../problem.ts'

/** What the text says before anyone knows what it means: only texts, lists and maps, each with its place. */
export type Tree = TreeScalar | TreeList | TreeMap

export interface TreeScalar {
  readonly kind: 'scalar'
  /** as typed, quotes taken off; empty where a key has no value */
  readonly text: string
  readonly place: Place
  /** what stands in place of a value that begins with `#`, as `#1 ramp` */
  readonly comment?: string
}

export interface TreeList {
  readonly kind: 'list'
  readonly items: readonly Tree[]
  readonly place: Place
}

export interface TreeMap {
  readonly kind: 'map'
  /** in the order of the file; a key may come twice */
  readonly pairs: readonly { readonly key: TreeScalar; readonly value: Tree }[]
  readonly place: Place
}
