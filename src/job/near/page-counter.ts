import type { Design } from '../../design/design.ts'
import { pathLength } from '../../geometry/length.ts'
import { pathSample } from '../../geometry/sample.ts'
import { isWorthTurning } from '../../page/cover/choose-cover.ts'
import type { Cover } from '../../page/cover/cover.ts'
import { coverPattern, leastCover } from '../../page/cover/coverage.ts'
import { leastPages } from '../../page/cover/loose-lattice.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { sidePatterns } from '../../pattern/patterns.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { coverDesign } from '../covering.ts'
import { usualLaying } from '../laying.ts'

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

/** So many parts of a line tell how far it reaches: turned by each half degree, all its points take ten times as long. */
const bearings = 24

/** What the sides of ramps look like on paper; alike where all is alike that pages depend on. */
interface Sides {
  readonly patterns: readonly Pattern[]
  readonly key: string
}

const sidesOf = ({ units, paper }: Design, ramps: readonly SolvedRamp[]): Sides => {
  const patterns = sidePatterns(ramps, units)
  const looks = patterns.map(({ cut, line, markPaths, points }) => [
    cut,
    line,
    markPaths,
    points.map(({ at }) => at),
  ])
  return { patterns, key: JSON.stringify([paper, looks]) }
}

/** Sides of one outline on one paper are covered once: most values that are tried change no side, or are tried again. */
export const pageCounter = (): PageCounter => {
  const known = new Map<string, number>()
  const once = (
    { patterns, key }: Sides,
    way: string,
    count: (patterns: readonly Pattern[]) => number,
  ): number => {
    const asked = `${way} ${key}`
    const pages = known.get(asked) ?? count(patterns)
    known.set(asked, pages)
    return pages
  }
  const takenOf = (sides: Sides, design: Design, ramps: readonly SolvedRamp[]): number =>
    once(sides, 'taken', () => {
      const solved = { stopped: false, ramps, checks: [] } as const
      const { counts, cover } = coverDesign(design, solved, usualLaying(design.paper))
      return counts[cover]
    })
  return {
    taken: (design, ramps) => takenOf(sidesOf(design, ramps), design, ramps),
    fewer: (design, ramps, { cover, pages }) => {
      const sides = sidesOf(design, ramps)
      if (cover === 'whole') return takenOf(sides, design, ramps) < pages
      const { sheet, overlap } = usualLaying(design.paper)
      const window = sheetWindow(sheet)
      const sum = (count: (pattern: Pattern) => number) => (patterns: readonly Pattern[]) =>
        patterns.reduce((all, pattern) => all + count(pattern), 0)
      // of a ribbon any turn that needs fewer will do: more is not looked for
      const most = cover === 'ribbon' ? pages - 1 : Number.POSITIVE_INFINITY
      const least = once(
        sides,
        `${cover} within ${most}`,
        sum((pattern) => leastCover(pattern, cover, window, overlap, most)),
      )
      const covered =
        least < pages
          ? once(
              sides,
              cover,
              sum((pattern) => coverPattern(pattern, cover, window, overlap).cells.length),
            )
          : least
      if (cover === 'ribbon' || covered < pages) return covered < pages
      const ribbon = once(
        sides,
        'ribbon at least',
        sum(({ line }) => leastPages(pathSample(line, pathLength(line) / bearings), window, overlap)),
      )
      return isWorthTurning(covered, ribbon) && takenOf(sides, design, ramps) < pages
    },
  }
}
