import type { Design } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { designCovers, type PatternCovers } from '../../src/page/cover/pattern-covers.ts'
import type { Sheet } from '../../src/page/sheet/sheet.ts'
import type { SolvedDesign } from '../../src/ramp/ramp.ts'
import { drawnDesign } from './whole.ts'

/** The last answer is kept: tests ask for several sets of one design in a row. */
const lastKept = <A extends readonly unknown[], T>(find: (...asked: A) => T): ((...asked: A) => T) => {
  const last: { key?: string; found?: T } = {}
  return (...asked) => {
    const key = JSON.stringify(asked)
    if (last.key !== key) Object.assign(last, { key, found: find(...asked) })
    return last.found as T
  }
}

/** A design by its text, solved, without its checks where none says stop. */
export const solvedText = lastKept(
  (text: string): { readonly design: Design; readonly solved: SolvedDesign } => {
    const reading = readDesign(text)
    if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
    return { design: reading.design, solved: drawnDesign(reading.design) }
  },
)

/** Its sides on their pages; none where a check says stop. */
export const coveredText = lastKept(
  (text: string, laying: { readonly sheet: Sheet; readonly overlap: number }): readonly PatternCovers[] => {
    const { design, solved } = solvedText(text)
    return solved.stopped ? [] : designCovers(design, solved, laying)
  },
)
