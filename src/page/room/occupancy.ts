import { type Box, boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'

/**
 * What lies where in a window: for each square of `step` mm the kinds of things on it, a bit for each kind. Filled once while a
 * page is laid out, then asked by all that is set on it.
 */
export interface Occupancy {
  readonly columns: number
  readonly rows: number
  readonly step: number
  /** from a row to the next in `taken`: whole words, so that four squares are looked at together */
  readonly stride: number
  readonly taken: Uint8Array
}

export const occupancyOf = (width: number, height: number, step: number): Occupancy => {
  const [columns, rows] = [Math.ceil(width / step), Math.ceil(height / step)]
  const stride = 4 * Math.ceil(columns / 4)
  return { columns, rows, step, stride, taken: new Uint8Array(stride * rows) }
}

/** The same, to be filled apart. */
export const occupancyCopy = (map: Occupancy): Occupancy => ({ ...map, taken: map.taken.slice() })

/** Squares of one row between two places along it, the squares of both among them. */
export const occupyRow = (map: Occupancy, row: number, x0: number, x1: number, kind: number): void => {
  const { columns, step, stride, taken } = map
  if (row < 0 || row >= map.rows) return
  const first = row * stride + Math.max(0, Math.floor(x0 / step))
  const last = row * stride + Math.min(columns - 1, Math.floor(x1 / step))
  for (let i = first; i <= last; i++) taken[i]! |= kind
}

export const occupyBox = (map: Occupancy, box: Box, kind: number): void => {
  const { columns, step, stride, taken } = map
  const from = Math.max(0, Math.floor(box.x0 / step))
  const to = Math.min(columns - 1, Math.floor(box.x1 / step))
  const top = Math.min(map.rows - 1, Math.floor(box.y1 / step))
  for (let row = Math.max(0, Math.floor(box.y0 / step)); row <= top; row++)
    for (let k = row * stride + from; k <= row * stride + to; k++) taken[k]! |= kind
}

/** Squares under a convex polygon that lies anyhow, its corners in their order, and `around` it. */
export const occupyUnder = (
  map: Occupancy,
  corners: readonly Point[],
  around: number,
  kind: number,
): void => {
  const box = boxOf(corners)
  if (box) {
    occupyBox(map, boxGrow(box, around), kind)
    return
  }
  const { columns, step, stride, taken } = map
  const { first, spans } = spansUnder(map, corners, around)
  for (let i = 0; i < spans.length; i += 2) {
    const from = (first + i / 2) * stride
    const last = from + Math.min(columns - 1, Math.floor(spans[i + 1]! / step))
    for (let k = from + Math.max(0, Math.floor(spans[i]! / step)); k <= last; k++) taken[k]! |= kind
  }
}

/** How many squares under a rectangle carry one of the kinds. */
export const takenUnder = (map: Occupancy, corners: readonly Point[], kinds: number): number =>
  countUnder(map, corners, kinds, Number.POSITIVE_INFINITY)

/** Whether no square of a box carries one of the kinds. */
export const clearIn = (map: Occupancy, box: Box, kinds: number): boolean => countIn(map, box, kinds, 1) === 0

/** Whether none does: quicker asked than how many. */
export const clearUnder = (map: Occupancy, corners: readonly Point[], kinds: number): boolean =>
  !isTakenAtGlance(map, corners, kinds) && countUnder(map, corners, kinds, 1) === 0

/** Shares of the diagonals at which a square is looked at before all of them are. */
const glances = [0.5, 0.2, 0.8] as const

/** Whether one of a few squares under a convex shape is taken: most places that are not clear are told so. */
const isTakenAtGlance = (map: Occupancy, corners: readonly Point[], kinds: number): boolean => {
  const a = corners[0]!
  const b = corners[1]!
  const c = corners[2] ?? b
  const d = corners[3] ?? a
  for (const share of glances) {
    if (isTaken(map, a.x + (c.x - a.x) * share, a.y + (c.y - a.y) * share, kinds)) return true
    if (isTaken(map, b.x + (d.x - b.x) * share, b.y + (d.y - b.y) * share, kinds)) return true
  }
  return false
}

/** Whether the square at a point carries one of the kinds: where that in the middle does, no shape about it is clear. */
export const takenAt = (map: Occupancy, p: Point, kinds: number): boolean => isTaken(map, p.x, p.y, kinds)

/** There are none out of the window. */
const isTaken = (
  { columns, rows, step, stride, taken }: Occupancy,
  x: number,
  y: number,
  kinds: number,
): boolean => {
  const column = Math.floor(x / step)
  const row = Math.floor(y / step)
  if (column < 0 || row < 0 || column >= columns || row >= rows) return false
  return (taken[row * stride + column]! & kinds) !== 0
}

const countUnder = (map: Occupancy, corners: readonly Point[], kinds: number, enough: number): number => {
  const { columns, step, stride, taken } = map
  const box = boxOf(corners)
  if (box) return countIn(map, box, kinds, enough)
  const { first, spans } = spansUnder(map, corners, 0)
  let count = 0
  for (let i = 0; i < spans.length; i += 2) {
    const from = (first + i / 2) * stride
    const last = from + Math.min(columns - 1, Math.floor(spans[i + 1]! / step))
    for (let k = from + Math.max(0, Math.floor(spans[i]! / step)); k <= last; k++)
      if ((taken[k]! & kinds) !== 0) {
        count++
        if (count >= enough) return count
      }
  }
  return count
}

const countIn = (
  { columns, rows, step, stride, taken }: Occupancy,
  { x0, y0, x1, y1 }: Box,
  kinds: number,
  enough: number,
): number => {
  const from = Math.max(0, Math.floor(x0 / step))
  const to = Math.min(columns - 1, Math.floor(x1 / step))
  const top = Math.min(rows - 1, Math.floor(y1 / step))
  let count = 0
  for (let row = Math.max(0, Math.floor(y0 / step)); row <= top; row++)
    for (let k = row * stride + from; k <= row * stride + to; k++)
      if ((taken[k]! & kinds) !== 0) {
        count++
        if (count >= enough) return count
      }
  return count
}

/** A rectangle as a box where it lies level or upright, as most words do; null where it is turned, or no rectangle. */
const boxOf = (corners: readonly Point[]): Box | null => {
  if (corners.length > 4) return null
  const a = corners[0]!
  const b = corners[1]!
  const c = corners[2] ?? b
  const level = Math.abs(b.y - a.y) < 1e-9 && Math.abs(c.x - b.x) < 1e-9
  const upright = Math.abs(b.x - a.x) < 1e-9 && Math.abs(c.y - b.y) < 1e-9
  if (!level && !upright) return null
  return {
    x0: Math.min(a.x, b.x, c.x),
    y0: Math.min(a.y, b.y, c.y),
    x1: Math.max(a.x, b.x, c.x),
    y1: Math.max(a.y, b.y, c.y),
  }
}

/** From where to where a convex polygon reaches in each row of squares, row by row from `first`. */
const spansUnder = (
  { rows, step }: Occupancy,
  corners: readonly Point[],
  around: number,
): { readonly first: number; readonly spans: readonly number[] } => {
  let y0 = Number.POSITIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (const { y } of corners) {
    if (y < y0) y0 = y
    if (y > y1) y1 = y
  }
  const first = Math.max(0, Math.floor((y0 - around) / step))
  const last = Math.min(rows - 1, Math.floor((y1 + around) / step))
  // a plain list: typed ones of more than eight numbers lie outside the heap, which takes longer than to fill them
  const spans: number[] = []
  for (let row = first; row <= last; row++) spans.push(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY)
  let from = corners[corners.length - 1]!
  for (const to of corners) {
    const low = from.y <= to.y ? from : to
    const high = from.y <= to.y ? to : from
    const slope = high.y - low.y < 1e-9 ? 0 : (high.x - low.x) / (high.y - low.y)
    const bottom = Math.max(first, Math.floor((low.y - around) / step))
    const top = Math.min(last, Math.floor((high.y + around) / step))
    for (let row = bottom; row <= top; row++) {
      const below = row * step - around
      const above = (row + 1) * step + around
      const a = below <= low.y ? low.x : low.x + (below - low.y) * slope
      const b = above >= high.y ? high.x : low.x + (above - low.y) * slope
      const i = 2 * (row - first)
      spans[i] = Math.min(spans[i]!, Math.min(a, b) - around)
      spans[i + 1] = Math.max(spans[i + 1]!, Math.max(a, b) + around)
    }
    from = to
  }
  return { first, spans }
}

/** The same in squares four times as wide and high: what one of them carries, all of it does. Of some kinds alone. */
export const coarser = ({ columns, rows, step, stride, taken }: Occupancy, of: number = 255): Occupancy => {
  const coarse = occupancyOf(columns * step, rows * step, 4 * step)
  const words = new Uint32Array(taken.buffer)
  const wide = stride / 4
  for (let row = 0; row < rows; row++) {
    const into = Math.floor(row / 4) * coarse.stride
    for (let column = 0; column < wide; column++) {
      const word = words[row * wide + column]!
      if (word === 0) continue
      const half = word | (word >>> 16)
      coarse.taken[into + column]! |= (half | (half >>> 8)) & of
    }
  }
  return coarse
}

/** What the squares of a box weigh by what they carry, summed row by row until it is as much as `most`: for few boxes. */
export const weightIn = (
  { columns, rows, step, stride, taken }: Occupancy,
  weights: readonly number[],
  most: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): number => {
  const from = Math.max(0, Math.floor(x0 / step))
  const to = Math.min(columns - 1, Math.floor(x1 / step))
  const top = Math.min(rows - 1, Math.floor(y1 / step))
  let sum = 0
  for (let row = Math.max(0, Math.floor(y0 / step)); row <= top && sum < most; row++)
    for (let k = row * stride + from; k <= row * stride + to; k++) sum += weights[taken[k]!]!
  return sum
}

/** How many squares of a box carry something, each times its weight; for many boxes of one state of the map. */
export type BoxCount = (x0: number, y0: number, x1: number, y1: number) => number

/**
 * Sums from the map's corner, looked up four at a time; `weigh`: what a square with these kinds of things counts, one with none counts
 * nothing.
 */
export const boxCounter = (
  { columns, rows, step, stride, taken }: Occupancy,
  weigh: (kinds: number) => number,
): BoxCount => {
  // few of all kinds together lie on a map
  const weights = new Int32Array(256).fill(-1)
  const wide = columns + 1
  const sums = new Uint32Array(wide * (rows + 1))
  for (let row = 0; row < rows; row++) {
    let sum = 0
    let at = (row + 1) * wide + 1
    for (let k = row * stride, end = k + columns; k < end; k++, at++) {
      const kinds = taken[k]!
      if (kinds !== 0) {
        if (weights[kinds]! < 0) weights[kinds] = weigh(kinds)
        sum += weights[kinds]!
      }
      sums[at] = sums[at - wide]! + sum
    }
  }
  return (x0, y0, x1, y1) => {
    const c0 = Math.max(0, Math.floor(x0 / step))
    const c1 = Math.min(columns - 1, Math.floor(x1 / step))
    const r0 = Math.max(0, Math.floor(y0 / step))
    const r1 = Math.min(rows - 1, Math.floor(y1 / step))
    if (c1 < c0 || r1 < r0) return 0
    const low = r0 * wide
    const high = (r1 + 1) * wide
    // sums may run over what they are kept in, what one box counts does not
    return (sums[high + c1 + 1]! - sums[low + c1 + 1]! - sums[high + c0]! + sums[low + c0]!) >>> 0
  }
}
