import type { Units } from '../../design/design.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import type { Cover } from '../cover/cover.ts'
import { laidCoverage } from '../cover/laid-coverage.ts'
import { laidOn } from '../cover/lattice.ts'
import type { PatternCovers } from '../cover/pattern-covers.ts'
import { type Budget, budgetOf, type Expected, expectedError } from '../proof/budget.ts'
import { chooseDatums, type Datum } from '../proof/datum.ts'
import { type SurveyLine, surveyLines } from '../proof/survey.ts'
import { jointShares } from '../tile/joints/joint-shares.ts'
import { snapHeight } from '../tile/snap-height.ts'
import { type Tile, tilesOf } from '../tile/tile.ts'

/** The tiles of one pattern, in the order of taping, and what proves them. */
export interface TileGroup {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
  readonly survey: readonly SurveyLine[]
  readonly expected: Expected
  /** what it is reckoned from */
  readonly budget: Budget
}

/** The tiles of each pattern, numbered through the set; `next`: the first row letter and number that are free after them. */
export const tileGroups = (
  covered: readonly PatternCovers[],
  window: Box,
  units: Units,
  { cover, uncertainty }: { readonly cover: Cover; readonly uncertainty: PrinterUncertainty },
): {
  readonly groups: readonly TileGroup[]
  readonly next: { readonly row: number; readonly number: number }
} => {
  let next = { row: 0, number: 1 }
  const groups = covered.map((one): TileGroup => {
    const { pattern } = one
    const coverage = laidCoverage(one, cover)
    const tiles = tilesOf(
      coverage,
      window,
      next,
      jointShares(pattern),
      snapHeight(coverage, pattern, units),
      pattern.points[0]!.at,
    )
    const rows = new Set(coverage.cells.map((cell) => cell.row))
    next = {
      row: next.row + Math.max(...rows) - Math.min(...rows) + 1,
      number: next.number + tiles.length,
    }
    const datums = chooseDatums(tiles, pattern, units, 4)
    const survey = surveyLines(tiles, pattern, datums)
    const budget = budgetOf(pattern, tiles, survey, laidOn(coverage.lattice))
    const expected = expectedError(budget, uncertainty)
    return { pattern, tiles, datums, survey, expected, budget }
  })
  return { groups, next }
}
