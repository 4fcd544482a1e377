import type { SetPlan } from '../drawing/set-plan.ts'
import { tilePlace, tilesInOrder } from './pick-pages.ts'

export interface TileGrid {
  readonly pattern: string
  /** rows from the top, a dot where no page lies */
  readonly rows: readonly string[]
}

/** Where the tiles of each pattern lie, in text. */
export const tileGrids = (plan: SetPlan): readonly TileGrid[] => {
  const placed = tilesInOrder(plan).flatMap(({ tile = '', places }) => {
    const place = tilePlace(tile)
    return place ? [{ tile, pattern: places[0]?.pattern ?? '', ...place }] : []
  })
  const patterns = [...new Set(placed.map(({ pattern }) => pattern))]
  return patterns.map((pattern): TileGrid => {
    const own = placed.filter((tile) => tile.pattern === pattern)
    const rows = [...new Set(own.map(({ row }) => row))].sort((a, b) => b - a)
    const columns = Math.max(...own.map(({ column }) => column))
    const width = Math.max(...own.map(({ tile }) => tile.length))
    const cell = (row: number, column: number): string =>
      own.find((tile) => tile.row === row && tile.column === column)?.tile ?? '.'
    return {
      pattern,
      rows: rows.map((row) =>
        Array.from({ length: columns }, (_, i) => cell(row, i + 1).padEnd(width))
          .join('  ')
          .trimEnd(),
      ),
    }
  })
}
