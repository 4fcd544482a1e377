import type { Box } from '../../geometry/bounds.ts'
import { modulo } from '../../geometry/modulo.ts'
import type { Point } from '../../geometry/point.ts'
import type { CellGrid } from './cell-grid.ts'
import { firstBeyond, type TurnedRun } from './turned-run.ts'

/** What lines fill of the columns between upright joint lines: heights from `lows[i]` to `highs[i]` in column `columns[i]`. */
export interface ColumnSpans {
  readonly lows: readonly number[]
  readonly highs: readonly number[]
  readonly columns: readonly number[]
}

/** Which cells of a place hold line: the first of them, 0, 0, lies above and to the right of `joint`. */
export interface HeldCells extends CellGrid {
  /** where an upright and a level joint line cross, in the lattice's frame */
  readonly joint: Point
}

/** The joint lines next below the lines: those of a place, by whole pitches. */
export const nextBelow = (box: Box, pitch: Point, { x, y }: Point): Point => ({
  x: box.x0 - modulo(box.x0 - x, pitch.x),
  y: box.y0 - modulo(box.y0 - y, pitch.y),
})

/** No cell of a place, up to where the lines end. */
export const emptyCells = (box: Box, pitch: Point, joint: Point): HeldCells => {
  const columns = Math.ceil((box.x1 - joint.x) / pitch.x) + 1
  const rows = Math.ceil((box.y1 - joint.y) / pitch.y) + 1
  // a plain list: typed ones of more than eight numbers lie outside the heap, which takes longer than to fill them
  return { joint, left: 0, low: 0, columns, lengths: new Array<number>(columns * rows).fill(0) }
}

/** The cells that hold line at a place whose upright joint lines are those of the spans. */
export const heldCells = (spans: ColumnSpans, box: Box, pitch: Point, place: Point): HeldCells => {
  const cells = emptyCells(box, pitch, nextBelow(box, pitch, place))
  for (let n = 0; n < spans.lows.length; n++) {
    const last = Math.floor((spans.highs[n]! - cells.joint.y) / pitch.y)
    for (let row = Math.floor((spans.lows[n]! - cells.joint.y) / pitch.y); row <= last; row++)
      cells.lengths[row * cells.columns + spans.columns[n]!] = 1
  }
  return cells
}

/** How many cells hold line with a level joint line at a height. */
export const cellCount = ({ lows, highs }: ColumnSpans, pitch: number, level: number): number => {
  let count = lows.length
  for (let n = 0; n < lows.length; n++)
    count += Math.floor((highs[n]! - level) / pitch) - Math.floor((lows[n]! - level) / pitch)
  return count
}

/**
 * The spans of all columns from the upright joint line at `first` on, so that each enters cells of its own, wherever the level joint
 * lines are. Two of a column that lie less than a pitch apart are one: what lies between them holds a joint line at most, and then
 * each has its own cell on its side of it. `first` lies left of the runs, by less than a pitch across.
 */
export const columnSpans = (runs: readonly TurnedRun[], pitch: Point, first: number): ColumnSpans => {
  const spans: FoundSpans = { lows: [], highs: [], columns: [] }
  for (const { points, turns, box } of runs) {
    let column = Math.floor((box.x0 - first) / pitch.x)
    // most marks lie whole within one
    if (column === Math.floor((box.x1 - first) / pitch.x)) {
      addSpan(spans, pitch.y, column, box.y0, box.y1)
      continue
    }
    column = Math.floor((points[0]! - first) / pitch.x)
    let low = points[1]!
    let high = low
    for (let k = 1; k < turns.length; k++) {
      const to = turns[k]!
      const step = points[2 * to]! >= points[2 * turns[k - 1]!]! ? 1 : -1
      let n = firstBeyond(points, 0, turns[k - 1]!, to, step, column, first, pitch.x)
      for (; n <= to; n = firstBeyond(points, 0, n - 1, to, step, column, first, pitch.x)) {
        const x = points[2 * n]!
        const y = points[2 * n + 1]!
        const wall = first + (step > 0 ? column + 1 : column) * pitch.x
        const at = y + ((wall - x) / (points[2 * n - 2]! - x)) * (points[2 * n - 1]! - y)
        addSpan(spans, pitch.y, column, Math.min(low, at), Math.max(high, at))
        low = at
        high = at
        column += step
      }
      low = Math.min(low, points[2 * to + 1]!)
      high = Math.max(high, points[2 * to + 1]!)
    }
    addSpan(spans, pitch.y, column, low, high)
  }
  return spans
}

type FoundSpans = { readonly [K in keyof ColumnSpans]: number[] }

/** A job of thousands of pages has hundreds of columns: those far behind are passed, and moved, so many at a time. */
const many = 16

/** In the order of columns and heights, one with those of its column that lie less than a pitch from it: they come mostly in order. */
const addSpan = (
  { lows, highs, columns }: FoundSpans,
  pitch: number,
  column: number,
  low: number,
  high: number,
): void => {
  const isBehind = (i: number): boolean =>
    columns[i]! > column || (columns[i] === column && lows[i]! - high >= pitch)
  let at = columns.length
  while (at >= many && isBehind(at - many)) at -= many
  while (at > 0 && isBehind(at - 1)) at--
  let n = at
  for (; n > 0 && columns[n - 1] === column && low - highs[n - 1]! < pitch; n--) {
    if (lows[n - 1]! < low) low = lows[n - 1]!
    if (highs[n - 1]! > high) high = highs[n - 1]!
  }
  // room for it, or none for those that it joins
  if (n === at && columns.length - at >= many)
    for (const list of [lows, highs, columns]) list.splice(at, 0, 0)
  else if (n === at)
    for (let i = columns.length; i > at; i--) {
      lows[i] = lows[i - 1]!
      highs[i] = highs[i - 1]!
      columns[i] = columns[i - 1]!
    }
  else if (n < at - 1) for (const list of [lows, highs, columns]) list.splice(n, at - 1 - n)
  lows[n] = low
  highs[n] = high
  columns[n] = column
}
