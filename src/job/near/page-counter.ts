import type { Design } from '../../design/design.ts'
import { pathLength } from '../../geometry/length.ts'
import type { Path } from '../../geometry/path.ts'
import { pathSample } from '../../geometry/sample.ts'
import { isWorthTurning } from '../../page/cover/choose-cover.ts'
import type { Cover } from '../../page/cover/cover.ts'
import { leastCover, patternCover } from '../../page/cover/coverage.ts'
import { leastPages } from '../../page/cover/loose-lattice.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import { distinctLines, type SideLines } from '../../pattern/side-lines.ts'
import type { FramedSide } from '../../ramp/kinds/quarter.ts'
import { coverSides } from '../covering.ts'
import { usualLaying } from '../laying.ts'

/** Pages to tape for the sides of ramps, and the way they are covered. */
export interface SidePages {
  readonly cover: Cover
  readonly pages: number
}

export interface PageCounter {
  /** as they are covered unless told */
  readonly taken: (design: Design, sides: readonly FramedSide[]) => SidePages
  /** whether they take fewer; most answers need a fraction of the work */
  readonly fewer: (design: Design, sides: readonly FramedSide[], than: SidePages) => boolean
  /** whether sides may, of which no more is known than this of their lines: where not, they need not be solved */
  readonly mayBeFewer: (design: Design, lines: readonly Path[], than: SidePages) => boolean
}

/** So many parts of a line tell how far it reaches: turned by each half degree, all its points take ten times as long. */
const bearings = 24

/** What sides look like on paper; alike where all is alike that pages depend on. */
interface Sides {
  readonly looks: readonly SideLines[]
  readonly key: string
}

const sidesOf = ({ paper }: Design, sides: readonly FramedSide[]): Sides => {
  const looks = distinctLines(sides)
  return { looks, key: JSON.stringify([paper, looks]) }
}

/** What was asked once is not reckoned again. */
const remembered = <T>() => {
  const known = new Map<string, T>()
  return (asked: string, reckon: () => T): T => {
    const answer = known.get(asked) ?? reckon()
    known.set(asked, answer)
    return answer
  }
}

/** Sides of one outline on one paper are covered once: most values that are tried change no side, or are tried again. */
export const pageCounter = (): PageCounter => {
  const once = remembered<number>()
  const onceTaken = remembered<SidePages>()
  const takenOf = ({ key, looks }: Sides, { paper }: Design): SidePages =>
    onceTaken(key, () => {
      const { counts, cover } = coverSides(looks, usualLaying(paper))
      return { cover, pages: counts[cover] }
    })
  const leastOf = ({ paper }: Design, lines: readonly Path[], { cover, pages }: SidePages): number => {
    const { sheet, overlap } = usualLaying(paper)
    // of a ribbon any turn that needs fewer will do: more is not looked for
    const most = cover === 'ribbon' ? pages - 1 : Number.POSITIVE_INFINITY
    return once(`${cover} within ${most} ${JSON.stringify([paper, lines])}`, () =>
      sum(lines, (line) =>
        leastCover({ line, cut: line, markPaths: [] }, cover, sheetWindow(sheet), overlap, most),
      ),
    )
  }
  /** no turned rows take fewer */
  const leastTurned = ({ paper }: Design, lines: readonly Path[]): number => {
    const { sheet, overlap } = usualLaying(paper)
    return once(`turned ${JSON.stringify([paper, lines])}`, () =>
      sum(lines, (line) =>
        leastPages(pathSample(line, pathLength(line) / bearings), sheetWindow(sheet), overlap),
      ),
    )
  }
  const mayBeFewer: PageCounter['mayBeFewer'] = (design, lines, than) => {
    if (than.cover === 'whole') return true
    const least = leastOf(design, lines, than)
    return least < than.pages || (than.cover === 'line' && isWorthTurning(least, leastTurned(design, lines)))
  }
  return {
    taken: (design, framed) => takenOf(sidesOf(design, framed), design),
    mayBeFewer,
    fewer: (design, framed, than) => {
      const sides = sidesOf(design, framed)
      const { cover, pages } = than
      if (cover === 'whole') return takenOf(sides, design).pages < pages
      const lines = sides.looks.map(({ line }) => line)
      if (!mayBeFewer(design, lines, than)) return false
      const { sheet, overlap } = usualLaying(design.paper)
      const covered = once(`${cover} ${sides.key}`, () =>
        sum(sides.looks, (side) => patternCover(side, cover, sheetWindow(sheet), overlap).pages),
      )
      if (cover === 'ribbon' || covered < pages) return covered < pages
      return isWorthTurning(covered, leastTurned(design, lines)) && takenOf(sides, design).pages < pages
    },
  }
}

const sum = <T>(all: readonly T[], count: (one: T) => number): number =>
  all.reduce((pages, one) => pages + count(one), 0)
