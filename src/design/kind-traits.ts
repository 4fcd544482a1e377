import type { RampDesign } from './design.ts'

/** What tells one kind of ramp from the others where all are treated alike. */
export interface KindTraits {
  /** where its length is reckoned from, and its left side is seen from */
  readonly start: string
  /** the end of its sheets that lies there */
  readonly sheetEnd: string
  /** which way its sheets follow each other */
  readonly way: string
}

/** A new kind is not complete without its row. */
export const kindTraits: Readonly<Record<RampDesign['kind'], KindTraits>> = {
  quarter: { start: 'the toe', sheetEnd: 'toe end', way: 'up' },
  flat: { start: 'the end at stud 1', sheetEnd: 'end', way: 'along' },
}
