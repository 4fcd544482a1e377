import type { Box } from '../../geometry/bounds.ts'
import { modulo } from '../../geometry/modulo.ts'
import type { Point } from '../../geometry/point.ts'
import { climb } from './climb.ts'

/** How a place of a lattice loads its pages. */
export interface CellWeights {
  /** where an upright and a level joint line cross, in the lattice's frame */
  readonly joint: Point
  /** cells that hold line, and the least length that one of them holds, mm */
  readonly pages: number
  readonly emptiest: number
  /** of each cell from `joint` on, row by row, mm of line */
  readonly columns: number
  readonly lengths: Float64Array
}

/** Steps that joint lines are moved by, mm. */
const steps = [16, 8, 4, 2]

/** Moved from `from`, as long as the emptiest page gains line, no page comes in, and `keeps` holds. */
export const fullerPlace = (
  runs: readonly Float64Array[],
  box: Box,
  pitch: Point,
  from: CellWeights,
  keeps: (weights: CellWeights) => boolean,
): CellWeights =>
  climb(from, steps, (joint, best) => {
    const found = weighCells(runs, box, pitch, joint)
    return found.pages > from.pages || found.emptiest <= best.emptiest || !keeps(found) ? null : found
  })

/** Steps of the runs are shorter than the pitch. */
export const weighCells = (
  runs: readonly Float64Array[],
  box: Box,
  pitch: Point,
  place: Point,
): CellWeights => {
  // the joint lines next below the lines
  const joint = {
    x: box.x0 - modulo(box.x0 - place.x, pitch.x),
    y: box.y0 - modulo(box.y0 - place.y, pitch.y),
  }
  const columns = Math.ceil((box.x1 - joint.x) / pitch.x) + 1
  const rows = Math.ceil((box.y1 - joint.y) / pitch.y) + 1
  const lengths = new Float64Array(columns * rows)
  for (const run of runs) {
    let x = run[0]!
    let y = run[1]!
    let column = Math.floor((x - joint.x) / pitch.x)
    let row = Math.floor((y - joint.y) / pitch.y)
    // most steps stay in their cell
    let left = joint.x + column * pitch.x
    let low = joint.y + row * pitch.y
    for (let n = 2; n < run.length; n += 2) {
      const fromX = x
      const fromY = y
      x = run[n]!
      y = run[n + 1]!
      const dx = x - fromX
      const dy = y - fromY
      const length = Math.sqrt(dx * dx + dy * dy)
      if (x >= left && x < left + pitch.x && y >= low && y < low + pitch.y) {
        lengths[row * columns + column]! += length
        continue
      }
      const fromColumn = column
      const fromRow = row
      const a = (fromX - joint.x) / pitch.x
      const b = (fromY - joint.y) / pitch.y
      const u = (x - joint.x) / pitch.x
      const v = (y - joint.y) / pitch.y
      column = Math.floor(u)
      row = Math.floor(v)
      left = joint.x + column * pitch.x
      low = joint.y + row * pitch.y
      if (column === fromColumn && row === fromRow) {
        lengths[row * columns + column]! += length
        continue
      }
      // the share of the step ahead of an upright joint line, and of a level one; the corner cell has what lies between
      const across = column === fromColumn ? null : (Math.max(column, fromColumn) - a) / (u - a)
      const up = row === fromRow ? null : (Math.max(row, fromRow) - b) / (v - b)
      const first = Math.min(across ?? 1, up ?? 1)
      const last = Math.max(across ?? 0, up ?? 0)
      const corner = across === first ? fromRow * columns + column : row * columns + fromColumn
      lengths[fromRow * columns + fromColumn]! += first * length
      lengths[corner]! += (last - first) * length
      lengths[row * columns + column]! += (1 - last) * length
    }
  }
  let pages = 0
  let emptiest = Number.POSITIVE_INFINITY
  for (let cell = 0; cell < lengths.length; cell++) {
    const length = lengths[cell]!
    if (length === 0) continue
    pages++
    if (length < emptiest) emptiest = length
  }
  return { joint, pages, emptiest, columns, lengths }
}
