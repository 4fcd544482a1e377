import type { Design } from '../../design/design.ts'
import { countWords } from '../../length/count-words.ts'
import { sidePatterns } from '../../pattern/patterns.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import { sheetWords } from '../../stock/panel/sheet-words.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { partsOf } from '../../stock/parts.ts'
import { sawTimber } from '../../stock/timber/boards.ts'
import { coverDesign } from '../covering.ts'
import { usualLaying } from '../laying.ts'

/** How many a design takes of all that is counted, each by its noun and what it is of: `panel of 9 plywood`, `timber`. */
export type Takes = ReadonlyMap<string, number>

/** null where some part has no panel or timber. */
export const takesOf = (design: Design, solved: WholeDesign, sidePages: SidePages): Takes | null => {
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  const timber = sawTimber(parts.timbers, design)
  if ('faults' in laid || timber === null) return null
  return new Map([
    ...laid.sheets.map(
      ({ sheet, panels }) =>
        [
          `panel of ${sheetWords(sheet, design.units)}`,
          panels.reduce((sum, { clamped }) => sum + clamped, 0),
        ] as const,
    ),
    ...timber.flatMap(({ boards }) => [['timber', boards.length] as const]),
    [`page of ${design.paper}`, sidePages(design, solved)],
  ])
}

/** Pages to tape for the sides of a design. */
export type SidePages = (design: Design, solved: WholeDesign) => number

/** Sides of one outline on one paper are covered once: most values that are tried change no side, or are tried again. */
export const pageCounter = (): SidePages => {
  const known = new Map<string, number>()
  return (design, solved) => {
    const outlines = sidePatterns(solved.ramps, design.units).map(({ cut, line, markPaths, points }) => [
      cut,
      line,
      markPaths,
      points.map(({ at }) => at),
    ])
    const key = JSON.stringify([design.paper, outlines])
    let pages = known.get(key)
    if (pages === undefined) {
      const { counts, cover } = coverDesign(design, solved, usualLaying(design.paper))
      pages = counts[cover]
      known.set(key, pages)
    }
    return pages
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
