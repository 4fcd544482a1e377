import type { Design } from '../../design/design.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { sidePatterns } from '../../pattern/patterns.ts'
import type { SideLines } from '../../pattern/side-lines.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import { type Sheet, sheetWindow } from '../sheet/sheet.ts'
import { type Cover, covers } from './cover.ts'
import { type PatternCover, patternCover } from './coverage.ts'

/** A pattern and its pages for each way to cover it: found once, for counting, choosing and laying out. */
export interface PatternCovers {
  readonly pattern: Pattern
  readonly covers: Readonly<Record<Cover, PatternCover>>
}

/** The sides of a design on pages that share `overlap` mm with the next. */
export const designCovers = (
  { units }: Design,
  { ramps }: WholeDesign,
  { sheet, overlap }: { readonly sheet: Sheet; readonly overlap: number },
): readonly PatternCovers[] =>
  sidePatterns(ramps, units).map((pattern) => ({ pattern, covers: sideCovers(pattern, sheet, overlap) }))

/** What a side is covered with, each way. */
export const sideCovers = (side: SideLines, sheet: Sheet, overlap: number): PatternCovers['covers'] => {
  const window = sheetWindow(sheet)
  const [whole, line, ribbon] = covers.map((cover) => patternCover(side, cover, window, overlap))
  return { whole: whole!, line: line!, ribbon: ribbon! }
}

/** Pages to tape for each way, all patterns together. */
export type CoverCounts = Readonly<Record<Cover, number>>

export const coverCounts = (patterns: readonly Pick<PatternCovers, 'covers'>[]): CoverCounts => {
  const count = (cover: Cover): number => patterns.reduce((sum, one) => sum + one.covers[cover].pages, 0)
  return { whole: count('whole'), line: count('line'), ribbon: count('ribbon') }
}
