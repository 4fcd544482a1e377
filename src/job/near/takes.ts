import type { Design } from '../../design/design.ts'
import { countWords } from '../../length/count-words.ts'
import { isWorthTurning } from '../../page/cover/choose-cover.ts'
import type { Cover } from '../../page/cover/cover.ts'
import { coverPattern } from '../../page/cover/coverage.ts'
import { looseLattices } from '../../page/cover/loose-lattice.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { sidePatterns } from '../../pattern/patterns.ts'
import type { SolvedRamp, WholeDesign } from '../../ramp/ramp.ts'
import type { SheetPanels } from '../../stock/panel/panels.ts'
import { sheetWords } from '../../stock/panel/sheet-words.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { type Parts, partsOf } from '../../stock/parts.ts'
import { sawTimber } from '../../stock/timber/boards.ts'
import { coverDesign } from '../covering.ts'
import { usualLaying } from '../laying.ts'

/** How many a design takes of what is bought, each by its noun and what it is of: `panel of 9 plywood`, `timber`. */
export type Takes = ReadonlyMap<string, number>

/** null where some part has no panel or timber. */
export const newTakes = (design: Design, solved: WholeDesign): Takes | null => {
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  return 'faults' in laid ? null : takesOf(design, parts, laid.sheets)
}

/** null where some part has no timber. */
export const takesOf = (
  design: Design,
  { timbers }: Pick<Parts, 'timbers'>,
  sheets: readonly SheetPanels[],
): Takes | null => {
  const timber = sawTimber(timbers, design)
  if (timber === null) return null
  return new Map([
    ...sheets.map(
      ({ sheet, panels }) =>
        [
          `panel of ${sheetWords(sheet, design.units)}`,
          panels.reduce((sum, { clamped }) => sum + clamped, 0),
        ] as const,
    ),
    ...timber.flatMap(({ boards }) => [['timber', boards.length] as const]),
    ['joint of sides', jointsOf(sheets)],
  ])
}

/** Where pieces meet that no panel holds whole, in all sides and ribs. */
const jointsOf = (sheets: readonly SheetPanels[]): number => {
  const sides = sheets.flatMap(({ parts }) => parts.flatMap(({ piece }) => (piece ? [piece.of] : [])))
  return sides.length - new Set(sides).size
}

/** Pages to tape for the sides of ramps, and the way they are covered. */
export interface SidePages {
  readonly cover: Cover
  readonly pages: number
}

export interface PageCounter {
  /** as they are covered unless told */
  readonly taken: (design: Design, ramps: readonly SolvedRamp[]) => number
  /** whether they take fewer; most answers need a fraction of the work */
  readonly fewer: (design: Design, ramps: readonly SolvedRamp[], than: SidePages) => boolean
}

/** Sides of one outline on one paper are covered once: most values that are tried change no side, or are tried again. */
export const pageCounter = (): PageCounter => {
  const known = new Map<string, number>()
  const once = (
    { units, paper }: Design,
    ramps: readonly SolvedRamp[],
    way: Cover | 'taken' | 'ribbon at least',
    count: (patterns: readonly Pattern[]) => number,
  ): number => {
    const patterns = sidePatterns(ramps, units)
    const outlines = patterns.map(({ cut, line, markPaths, points }) => [
      cut,
      line,
      markPaths,
      points.map(({ at }) => at),
    ])
    const key = JSON.stringify([paper, way, outlines])
    const pages = known.get(key) ?? count(patterns)
    known.set(key, pages)
    return pages
  }
  const taken: PageCounter['taken'] = (design, ramps) =>
    once(design, ramps, 'taken', () => {
      const solved = { stopped: false, ramps, checks: [] } as const
      const { counts, cover } = coverDesign(design, solved, usualLaying(design.paper))
      return counts[cover]
    })
  return {
    taken,
    fewer: (design, ramps, { cover, pages }) => {
      if (cover === 'whole') return taken(design, ramps) < pages
      const { sheet, overlap } = usualLaying(design.paper)
      const window = sheetWindow(sheet)
      const sum = (count: (pattern: Pattern) => number) => (patterns: readonly Pattern[]) =>
        patterns.reduce((all, pattern) => all + count(pattern), 0)
      const covered = once(
        design,
        ramps,
        cover,
        sum((pattern) => coverPattern(pattern, cover, window, overlap).cells.length),
      )
      if (cover === 'ribbon' || covered < pages) return covered < pages
      const ribbon = once(
        design,
        ramps,
        'ribbon at least',
        sum((pattern) => looseLattices(pattern, 'ribbon', window, overlap).lattices[0]!.least),
      )
      return isWorthTurning(covered, ribbon) && taken(design, ramps) < pages
    },
  }
}

/** What the one takes less than the other; null where it takes more of anything. */
export const savedFrom = (
  before: Takes,
  after: Takes,
): readonly (readonly [noun: string, count: number])[] | null => {
  const nouns = [...new Set([...before.keys(), ...after.keys()])]
  const gains = nouns.map((noun) => [noun, (before.get(noun) ?? 0) - (after.get(noun) ?? 0)] as const)
  return gains.some(([, gain]) => gain < 0) ? null : gains.filter(([, gain]) => gain > 0)
}

/** `2 panels of 9 plywood` */
export const takenWords = ([noun, count]: readonly [noun: string, count: number]): string => {
  const [first, ...rest] = noun.split(' ')
  return [countWords(count, first!), ...rest].join(' ')
}
