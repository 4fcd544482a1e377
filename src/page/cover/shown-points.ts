import type { Point } from '../../geometry/point.ts'
import { type CellGrid, coverageGrid, isHeld } from './cell-grid.ts'
import type { HeldCells } from './column-spans.ts'
import type { Cell, Lattice } from './lattice.ts'

/** Room round a point that a builder measures from: its ring of 1.5 mm and 5 mm of air, mm. */
export const pointRoom = 6.5

type Shape = Pick<Lattice, 'width' | 'height' | 'overlap'>

/**
 * How many points have their room whole in what one page keeps: no joint line and no edge of a window comes nearer. An upright and a
 * level joint line cross at `x0`, `y0`, the lower left one of cell 0, 0.
 */
const pointsHeld = (
  points: Float64Array,
  x0: number,
  y0: number,
  { width, height, overlap }: Shape,
  grid: CellGrid,
): number => {
  const px = width - overlap
  const py = height - overlap
  // where no page lies beyond a joint line the window goes on behind it
  const least = pointRoom - overlap / 2
  let count = 0
  for (let i = 0; i < points.length; i += 2) {
    const x = points[i]! - x0
    const y = points[i + 1]! - y0
    const column = Math.floor(x / px)
    const row = Math.floor(y / py)
    if (!isHeld(grid, column, row)) continue
    const left = x - column * px
    const low = y - row * py
    const right = px - left
    const high = py - low
    if (left < pointRoom && (left < least || isHeld(grid, column - 1, row))) continue
    if (right < pointRoom && (right < least || isHeld(grid, column + 1, row))) continue
    if (low < pointRoom && (low < least || isHeld(grid, column, row - 1))) continue
    if (high < pointRoom && (high < least || isHeld(grid, column, row + 1))) continue
    count++
  }
  return count
}

/** The same for the cells of a place that hold line, its level joint lines at `level` or as they are. */
export const pointsIn = (
  points: Float64Array,
  cells: HeldCells,
  shape: Shape,
  level = cells.joint.y,
): number => pointsHeld(points, cells.joint.x, level, shape, cells)

/** The same for a coverage; points of the pattern. */
export const pointsOn = (points: readonly Point[], lattice: Lattice, cells: readonly Cell[]): number => {
  const [a, b, c, d, e, f] = lattice.toFrame
  const framed = new Float64Array(points.flatMap(({ x, y }) => [a * x + c * y + e, b * x + d * y + f]))
  const half = lattice.overlap / 2
  return pointsHeld(framed, half, half, lattice, coverageGrid(cells))
}
