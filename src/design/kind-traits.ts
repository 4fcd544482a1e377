import type { RampKind } from './design.ts'

/** What tells one kind of ramp from the others where all are treated alike. */
interface KindTraits {
  /** whether its sides carry a curve, so that they are plotted: all others are straight cuts */
  readonly curved: boolean
  /** where its length is reckoned from, and its left side is seen from */
  readonly start: string
  /** the end of its sheets that lies there */
  readonly sheetEnd: string
  /** which way its sheets follow each other */
  readonly way: string
  /** why no other ramp can be kept inside it; null where one can */
  readonly keepsNone: string | null
  /** what is in the file that `new` writes for it */
  readonly starter: string
}

/** A new kind is not complete without its row. */
export const kindTraits = {
  quarter: {
    curved: true,
    start: 'the toe',
    sheetEnd: 'toe end',
    way: 'up',
    keepsNone: null,
    starter: 'a quarter',
  },
  flat: {
    curved: false,
    start: 'the end at stud 1',
    sheetEnd: 'end',
    way: 'along',
    keepsNone: 'too low to keep another inside',
    starter: 'a flat and a quarter that runs out on it',
  },
} as const satisfies Readonly<Record<RampKind, KindTraits>>

interface OfKind {
  readonly kind: RampKind
}

type CurvedKind = { [K in RampKind]: (typeof kindTraits)[K]['curved'] extends true ? K : never }[RampKind]

/** Those of a union whose kind carries a curve. */
export type Curved<R extends OfKind> = Extract<R, { readonly kind: CurvedKind }>

/**
 * Asked in place of one kind by its name: every kind stands on one of two sides, and where a new one lacks what is read of its side,
 * the compiler says so.
 */
export const isCurved = <R extends OfKind>(ramp: R): ramp is Curved<R> => kindTraits[ramp.kind].curved

export const curvedOf = <R extends OfKind>(ramps: readonly R[]): readonly Curved<R>[] =>
  ramps.filter(isCurved)

/** All others. */
export const straightOf = <R extends OfKind>(ramps: readonly R[]): readonly Exclude<R, Curved<R>>[] =>
  ramps.filter((ramp): ramp is Exclude<R, Curved<R>> => !isCurved(ramp))
