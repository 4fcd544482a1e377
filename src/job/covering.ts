import type { Design } from '../design/design.ts'
import { chooseCover } from '../page/cover/choose-cover.ts'
import type { Cover } from '../page/cover/cover.ts'
import {
  type CoverCounts,
  coverCounts,
  designCovers,
  type PatternCovers,
  sideCovers,
} from '../page/cover/pattern-covers.ts'
import type { SideLines } from '../pattern/side-lines.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import type { Laying } from './laying.ts'

/** The sides of a design on their pages. */
export interface Covering {
  readonly covered: readonly PatternCovers[]
  /** pages to tape for each way to cover them */
  readonly counts: CoverCounts
  /** the way that is taken */
  readonly cover: Cover
  /** why it is, where nothing was asked for */
  readonly why: string | null
}

/** How a design is covered: whatever lays it, counts it or tells of it asks here. */
export const coverDesign = (
  design: Design,
  solved: WholeDesign,
  laying: Pick<Laying, 'sheet' | 'overlap' | 'cover'>,
): Covering => {
  const covered = designCovers(design, solved, laying)
  const counts = coverCounts(covered)
  const chosen = chooseCover(counts)
  return laying.cover === null
    ? { covered, counts, ...chosen }
    : { covered, counts, cover: laying.cover, why: null }
}

/** The same of sides of which no more is known than their lines: pages, and the way that is taken where none is asked for. */
export const coverSides = (
  sides: readonly SideLines[],
  { sheet, overlap }: Pick<Laying, 'sheet' | 'overlap'>,
): Pick<Covering, 'counts' | 'cover'> => {
  const counts = coverCounts(sides.map((side) => ({ covers: sideCovers(side, sheet, overlap) })))
  return { counts, cover: chooseCover(counts).cover }
}
