import type { Units } from '../../design/design.ts'
import type { Box } from '../../geometry/bounds.ts'
import { inch } from '../../geometry/inch.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import type { Cover } from '../cover/cover.ts'
import type { Lattice } from '../cover/lattice.ts'
import { latticePitch } from '../cover/lattice.ts'
import type { PatternCovers } from '../cover/pattern-covers.ts'
import { showMarks } from '../cover/shown-marks.ts'
import { type Budget, budgetOf, type Expected, expectedError } from '../proof/budget.ts'
import { chooseDatums, type Datum } from '../proof/datum.ts'
import { type SurveyLine, surveyLines } from '../proof/survey.ts'
import { jointShares } from '../tile/joint-shares.ts'
import { type Tile, tilesOf } from '../tile/tile.ts'

/** The tiles of one pattern, in the order of taping, and what proves them. */
export interface TileGroup {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly lattice: Lattice
  readonly datums: readonly Datum[]
  readonly survey: readonly SurveyLine[]
  readonly expected: Expected
  /** what it is reckoned from */
  readonly budget: Budget
}

/** The tiles of each pattern, numbered through the set; `next`: the first row letter that is free after them. */
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
  const groups = covered.map(({ pattern, covers }): TileGroup => {
    const coverage = showMarks(pattern, cover, covers[cover])
    const tiles = tilesOf(
      coverage,
      window,
      next,
      jointShares(pattern),
      snapHeight(coverage.lattice, pattern.height, units),
    )
    const rows = new Set(coverage.cells.map((cell) => cell.row))
    next = {
      row: next.row + Math.max(...rows) - Math.min(...rows) + 1,
      number: next.number + tiles.length,
    }
    const datums = chooseDatums(tiles, pattern, units, 4)
    const survey = surveyLines(tiles, pattern, datums)
    const budget = budgetOf(pattern, tiles, survey)
    const expected = expectedError(budget, uncertainty)
    return { pattern, tiles, lattice: coverage.lattice, datums, survey, expected, budget }
  })
  return { groups, next }
}

/** How far a snap line may lie from the middle of its row, a share of its height: farther off it would run into the scales. */
const snapOff = 0.08

/** Chalk this close to the panel's edge is hard to snap, mm. */
const chalkRoom = 5

/**
 * Middle of a row, moved so that it lies a round distance above the panel's bottom edge where rows are level, and on the panel
 * if it can.
 */
const snapHeight =
  (lattice: Lattice, panel: number, units: Units) =>
  (row: number): number => {
    const middle = lattice.height / 2
    if (lattice.toFrame[1] !== 0) return middle
    const step = units === 'in' ? inch / 2 : 10
    // height over the bottom edge of the row's windows
    const base = row * latticePitch(lattice).y - lattice.toFrame[5]
    const near = Math.round((base + middle) / step)
    const heights = [near, near - 1, near + 1, near - 2, near + 2].map((count) => count * step)
    const found = heights.find(
      (height) =>
        Math.abs(height - base - middle) <= snapOff * lattice.height &&
        height >= chalkRoom &&
        height <= panel - chalkRoom,
    )
    return (found ?? near * step) - base
  }
