import type { Design } from '../design/design.ts'
import { curvedOf } from '../design/kind-traits.ts'
import { partDrafts } from '../page/set/part-drafts.ts'
import { type LaidSet, layOutSet, type SetParts, setParts } from '../page/set/set.ts'
import type { Fingerprint } from '../page/set/set-code.ts'
import type { Sheet } from '../page/sheet/sheet.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { type Covering, coverDesign } from './covering.ts'
import type { Laying } from './laying.ts'
import { asked, type Refusal } from './refusal.ts'
import { tooManyPages } from './too-many-pages.ts'

export interface PlotJob {
  readonly solved: WholeDesign
  /** where its covers lie goes into the set */
  readonly covering: Omit<Covering, 'covered'>
  readonly set: LaidSet
}

/**
 * The full-size pages of a design, and their plan. `text`: the design's own, which the plan keeps; `told` how many tiles will be laid;
 * `stripsBehind`: a set that has no story strips has them behind its pages, under the code that it has without.
 */
export const plotJob = (
  design: Design,
  text: string,
  laying: Laying,
  fingerprint: Fingerprint,
  told?: (tiles: number) => void,
  stripsBehind = false,
): PlotJob | Refusal => {
  const solved = solveDesign(design)
  if (solved.stopped) return { refused: 'stop', checks: solved.checks }
  if (curvedOf(solved.ramps).length === 0) return { refused: 'no-curve' }
  const { covered, ...covering } = coverDesign(design, solved, laying)
  const { counts, cover } = covering
  const { sheet, overlap } = laying
  const refused = (strips: number): string | null =>
    tooManyPages(counts[cover], sheet, overlap, cover, covered.length, strips)
  const tooManyTiles = refused(0)
  if (tooManyTiles !== null) return asked([tooManyTiles])
  const options = { ...laying, cover, text, fingerprint }
  const plain = setParts(design, solved, options, covered)
  const parts = stripsBehind && !laying.strips ? withStrips(plain, design, solved, sheet) : plain
  const tooManyStrips = refused(parts.pages.last.length)
  if (tooManyStrips !== null) return asked([tooManyStrips])
  told?.(counts[cover])
  return {
    solved,
    covering,
    set: layOutSet(design, solved, options, covered, parts),
  }
}

const withStrips = (
  { code, trials, pages }: SetParts,
  { title, units }: Design,
  { ramps }: WholeDesign,
  sheet: Sheet,
): SetParts => {
  const { last } = partDrafts([], ramps, { sheet, units, code, title }, false)
  return { code, trials, pages: { ...pages, last } }
}
