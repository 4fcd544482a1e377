import type { Cell } from './lattice.ts'

/** Which cells hold line: of each from column `left` and row `low` on, row by row, above 0 where it does. */
export interface CellGrid {
  readonly left: number
  readonly low: number
  readonly columns: number
  readonly lengths: number[]
}

/** Asked of thousands of cells. */
export const isHeld = ({ left, low, columns, lengths }: CellGrid, column: number, row: number): boolean => {
  const across = column - left
  const at = (row - low) * columns
  return across >= 0 && across < columns && at >= 0 && at < lengths.length && lengths[at + across]! > 0
}

/** The cells of a coverage, whatever line they hold. */
export const coverageGrid = (cells: readonly Cell[]): CellGrid => {
  let left = Number.POSITIVE_INFINITY
  let low = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { column, row } of cells) {
    left = Math.min(left, column)
    right = Math.max(right, column)
    low = Math.min(low, row)
    high = Math.max(high, row)
  }
  const columns = right - left + 1
  const lengths = new Array<number>(columns * (high - low + 1)).fill(0)
  for (const { column, row } of cells) lengths[(row - low) * columns + column - left] = 1
  return { left, low, columns, lengths }
}
