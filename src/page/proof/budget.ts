import type { PlanBudget } from '../../drawing/set-plan.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { type Laid, leftOver, wayOn } from '../../printer/effect.ts'
import type { PrinterUncertainty } from '../../printer/uncertainty.ts'
import type { Tile } from '../tile/tile.ts'
import type { SurveyLine } from './survey.ts'

/** How far the traced line may lie from its place, mm: one standard deviation, and everything against you at once. */
export interface Expected {
  /** of the lip, seen from the toe */
  readonly lip: { readonly likely: number; readonly worst: number }
  /** of the middle of the curve */
  readonly curve: { readonly likely: number; readonly worst: number }
}

/** From toe to lip along the rows and off them, mm; joints on the way; how far a set that meets its distances may be off, mm, null where none is checked. */
export type Budget = PlanBudget

/**
 * Parts of the budget, mm; common practice, no source. A page repeats within 0.1, a joint taped by its scales within 0.15
 * likely and 0.3 at worst, a tape reads 0.25, a pencil line along a pricked or cut line lies within 0.3 likely, 0.5 at worst.
 */
const parts = {
  page: { likely: 0.1, worst: 0.2 },
  joint: { likely: 0.15, worst: 0.3 },
  tape: 0.25,
  pencil: { likely: 0.3, worst: 0.5 },
} as const

/**
 * The printer's error grows with the distance from the toe, pages and joints add like a random walk, and the survey puts a
 * bound on all three: a set that meets its distances is off by no more than their tolerance and the tape's reading, evenly
 * spread within. The pencil comes on top.
 */
export const expectedError = (
  { run, rise, rows, joints, bound: tightest }: Budget,
  printer: PrinterUncertainty,
): Expected => {
  const bound = tightest ?? Number.POSITIVE_INFINITY
  const at = (share: number) => {
    const n = joints * share
    const { likely, worst } = leftOver(
      { along: run * share, off: rise * share, rows: rows ?? 'across' },
      printer,
    )
    const loose = {
      likely: Math.hypot(likely, parts.page.likely * Math.sqrt(n), parts.joint.likely * Math.sqrt(n)),
      worst: worst + (parts.page.worst + parts.joint.worst) * n,
    }
    return {
      likely: Math.hypot(Math.min(loose.likely, bound / Math.sqrt(3)), parts.pencil.likely),
      worst: Math.min(loose.worst, bound) + parts.pencil.worst,
    }
  }
  return { lip: at(1), curve: at(0.5) }
}

/** A bound in words: rounded up, so that it holds; mm. */
export const boundWords = (mm: number): string => (Math.ceil(mm * 10 - 1e-6) / 10).toFixed(1)

/** What of a pattern's pages the budget is made from. */
export const budgetOf = (
  pattern: Pattern,
  tiles: readonly Tile[],
  survey: readonly SurveyLine[],
  laid: Laid,
): Budget => {
  const [toe, lip] = [pattern.points[0]!.at, pattern.points[1]!.at]
  const { along, off, rows } = wayOn(laid, lip.x - toe.x, lip.y - toe.y)
  const chord = survey.find(({ kind }) => kind === 'chord')
  return {
    run: along,
    rise: off,
    ...(rows === 'down' && { rows }),
    joints: jointsAlong(tiles),
    bound: chord ? chord.tolerance + parts.tape : null,
  }
}

/** Joints between the first and the last page of a pattern, along rows and columns. */
const jointsAlong = (tiles: readonly Tile[]): number => {
  const columns = new Set(tiles.map((tile) => tile.column))
  const rows = new Set(tiles.map((tile) => tile.row))
  return columns.size - 1 + (rows.size - 1)
}
