import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { climb } from './climb.ts'
import { emptyCells, type HeldCells, nextBelow } from './column-spans.ts'
import { firstBeyond, type TurnedRun } from './turned-run.ts'

/** How a place of a lattice loads its pages. */
export interface CellWeights extends HeldCells {
  /** cells that hold line, and the least length that one of them holds, mm; `lengths` has that of each */
  readonly pages: number
  readonly emptiest: number
}

/** No line, mm. */
const nothing = 1e-9

/** Steps that joint lines are moved by, mm. */
const steps = [16, 8, 4, 2]

/** Moved from `from`, as long as the emptiest page gains line, no page comes in, and `keeps` holds. */
export const fullerPlace = (
  runs: readonly TurnedRun[],
  box: Box,
  pitch: Point,
  from: CellWeights,
  keeps: (weights: CellWeights) => boolean,
): CellWeights =>
  climb(from, steps, (joint, best) => {
    const found = weighCells(runs, box, pitch, joint)
    return found.pages > from.pages || found.emptiest <= best.emptiest || !keeps(found) ? null : found
  })

/** Each joint line that is crossed is looked for; between two of them lies one cell. */
export const weighCells = (
  runs: readonly TurnedRun[],
  around: Box,
  pitch: Point,
  place: Point,
): CellWeights => {
  const { joint, left, low, columns, lengths } = emptyCells(around, pitch, nextBelow(around, pitch, place))
  for (const { points, along, turns, box } of runs) {
    let column = Math.floor((box.x0 - joint.x) / pitch.x)
    let row = Math.floor((box.y0 - joint.y) / pitch.y)
    // most marks lie whole within one cell
    if (
      column === Math.floor((box.x1 - joint.x) / pitch.x) &&
      row === Math.floor((box.y1 - joint.y) / pitch.y)
    ) {
      lengths[row * columns + column]! += along[along.length - 1]!
      continue
    }
    column = Math.floor((points[0]! - joint.x) / pitch.x)
    row = Math.floor((points[1]! - joint.y) / pitch.y)
    let done = 0
    for (let k = 1; k < turns.length; k++) {
      const from = turns[k - 1]!
      const to = turns[k]!
      const right = points[2 * to]! >= points[2 * from]! ? 1 : -1
      const up = points[2 * to + 1]! >= points[2 * from + 1]! ? 1 : -1
      let x = firstBeyond(points, 0, from, to, right, column, joint.x, pitch.x)
      let y = firstBeyond(points, 1, from, to, up, row, joint.y, pitch.y)
      while (x <= to || y <= to) {
        const byX =
          x <= to
            ? crossedAt(points, along, x, 0, joint.x + (right > 0 ? column + 1 : column) * pitch.x)
            : Number.POSITIVE_INFINITY
        const byY =
          y <= to
            ? crossedAt(points, along, y, 1, joint.y + (up > 0 ? row + 1 : row) * pitch.y)
            : Number.POSITIVE_INFINITY
        const at = Math.min(byX, byY)
        lengths[row * columns + column]! += at - done
        done = at
        if (byX <= byY) {
          column += right
          x = firstBeyond(points, 0, x - 1, to, right, column, joint.x, pitch.x)
        } else {
          row += up
          y = firstBeyond(points, 1, y - 1, to, up, row, joint.y, pitch.y)
        }
      }
    }
    lengths[row * columns + column]! += along[along.length - 1]! - done
  }
  let pages = 0
  let emptiest = Number.POSITIVE_INFINITY
  for (let cell = 0; cell < lengths.length; cell++) {
    const length = lengths[cell]!
    // corners of cells are met within rounding
    if (length < nothing) {
      lengths[cell] = 0
      continue
    }
    pages++
    if (length < emptiest) emptiest = length
  }
  // places that are alike stay alike, whatever was rounded on the way
  return { joint, pages, emptiest: Math.round(emptiest * 1e9) / 1e9, left, low, columns, lengths }
}

/** The way along a run to where its step to a point crosses a joint line. */
const crossedAt = (
  points: Float64Array,
  along: Float64Array,
  to: number,
  axis: 0 | 1,
  line: number,
): number => {
  const from = points[2 * to - 2 + axis]!
  const share = (line - from) / (points[2 * to + axis]! - from)
  return along[to - 1]! + share * (along[to]! - along[to - 1]!)
}
