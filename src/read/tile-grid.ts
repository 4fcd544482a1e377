import type { PlanPage, PlanPlace, SetPlan } from '../drawing/set-plan.ts'
import { affineApply, affineInvert } from '../geometry/affine.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { Point } from '../geometry/point.ts'
import { tilesInOrder } from './pick-pages.ts'

export interface TileGrid {
  readonly pattern: string
  /** rows from the top, a dot where no page lies */
  readonly rows: readonly string[]
}

/** More than a screen shows of them. */
const mostCells = 100_000

/** Where the tiles of each pattern lie, in text. */
export const tileGrids = (plan: SetPlan): readonly TileGrid[] => {
  const placed = tilesInOrder(plan).flatMap(({ tile = '', places }) =>
    places[0]
      ? [{ tile, pattern: places[0].pattern, ...cellOf(places[0], firstOf(plan, places[0]), plan) }]
      : [],
  )
  const patterns = [...new Set(placed.map(({ pattern }) => pattern))]
  return patterns.map((pattern): TileGrid => {
    const own = placed.filter((tile) => tile.pattern === pattern)
    const rows = [...new Set(own.map(({ row }) => row))].sort((a, b) => b - a)
    const columns = own.map(({ column }) => column)
    const [first, last] = [Math.min(...columns), Math.max(...columns)]
    const width = Math.max(...own.map(({ tile }) => tile.length))
    const at = new Map(own.map(({ row, column, tile }) => [`${row},${column}`, tile]))
    const cell = (row: number, column: number): string => at.get(`${row},${column}`) ?? '.'
    // tiles that lie far apart: a list of them says more than a field of dots
    if (rows.length * (last - first + 1) > mostCells)
      return { pattern, rows: [own.map(({ tile }) => tile).join('  ')] }
    return {
      pattern,
      rows: rows.map((row) =>
        Array.from({ length: last - first + 1 }, (_, i) => cell(row, first + i).padEnd(width))
          .join('  ')
          .trimEnd(),
      ),
    }
  })
}

const firstOf = (plan: SetPlan, { pattern }: PlanPlace): PlanPlace =>
  tilesInOrder(plan)
    .flatMap(({ places }: PlanPage) => places[0] ?? [])
    .find((one) => one.pattern === pattern)!

/** How many pages a tile lies to the right of the first one of its pattern and above it, as the drawing is read. */
const cellOf = (
  place: PlanPlace,
  first: PlanPlace,
  { overlap }: SetPlan,
): { readonly column: number; readonly row: number } => {
  const [x0, y0, x1, y1] = place.window
  const off = overlap * pointsPerMm
  const toFirst = affineInvert(first.toPattern)
  const at = (p: Point): Point => affineApply(toFirst, affineApply(place.toPattern, p))
  const [from, to] = [{ x: first.window[0], y: first.window[1] }, at({ x: x0, y: y0 })]
  const [right, up] = [
    Math.round((to.x - from.x) / (x1 - x0 - off)),
    Math.round((to.y - from.y) / (y1 - y0 - off)),
  ]
  // a landscape layout is turned a quarter on its page: what is right on the drawing is up on the page
  const turned = Math.abs(place.toPattern[0]) < Math.abs(place.toPattern[1])
  return turned ? { column: up, row: -right } : { column: right, row: up }
}
