import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'

/** Which parts of a window already carry something: squares of `step` mm, 1 where taken. Filled while a page is laid out. */
export interface Occupancy {
  readonly columns: number
  readonly rows: number
  readonly step: number
  readonly taken: Uint8Array
}

export const occupancyOf = (width: number, height: number, step = 3): Occupancy => {
  const [columns, rows] = [Math.ceil(width / step), Math.ceil(height / step)]
  return { columns, rows, step, taken: new Uint8Array(columns * rows) }
}

const range = (low: number, high: number, step: number, count: number): readonly [number, number] => [
  Math.max(0, Math.floor(low / step)),
  Math.min(count - 1, Math.floor(high / step)),
]

export const occupyBox = (map: Occupancy, box: Box): void => {
  const [c0, c1] = range(box.x0, box.x1, map.step, map.columns)
  const [r0, r1] = range(box.y0, box.y1, map.step, map.rows)
  for (let r = r0; r <= r1; r++)
    map.taken.fill(1, r * map.columns + c0, r * map.columns + Math.max(c0, c1 + 1))
}

export const occupyPoints = (map: Occupancy, points: readonly Point[], around: number): void => {
  for (const { x, y } of points)
    occupyBox(map, { x0: x - around, y0: y - around, x1: x + around, y1: y + around })
}

/** How many squares of a box are taken. */
export const takenIn = (map: Occupancy, box: Box): number => {
  const [c0, c1] = range(box.x0, box.x1, map.step, map.columns)
  const [r0, r1] = range(box.y0, box.y1, map.step, map.rows)
  let count = 0
  for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) count += map.taken[r * map.columns + c]!
  return count
}

/** `takenIn` for many boxes of one state of the map: sums from its corner, looked up four at a time. */
const boxCounter = ({ columns, rows, step, taken }: Occupancy): ((box: Box) => number) => {
  const wide = columns + 1
  const sums = new Uint32Array(wide * (rows + 1))
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      sums[(r + 1) * wide + c + 1] =
        taken[r * columns + c]! + sums[r * wide + c + 1]! + sums[(r + 1) * wide + c]! - sums[r * wide + c]!
  return (box) => {
    const [c0, c1] = range(box.x0, box.x1, step, columns)
    const [r0, r1] = range(box.y0, box.y1, step, rows)
    if (c1 < c0 || r1 < r0) return 0
    return (
      sums[(r1 + 1) * wide + c1 + 1]! -
      sums[r0 * wide + c1 + 1]! -
      sums[(r1 + 1) * wide + c0]! +
      sums[r0 * wide + c0]!
    )
  }
}

/** Borders looked for round a block, mm. */
const border = { step: 6, most: 24 }

/**
 * Lower left corner for a block of a size inside `within`: where the widest empty border around it is free, else where it
 * covers least. Bottom left first among equals.
 */
export const freePlace = (
  map: Occupancy,
  width: number,
  height: number,
  within: Box,
): { readonly at: Point; readonly covered: number } | null => {
  const count = boxCounter(map)
  let best: { at: Point; covered: number; border: number } | undefined
  const step = 4
  for (let y = within.y0; y + height <= within.y1; y += step)
    for (let x = within.x0; x + width <= within.x1; x += step) {
      const around = (by: number): number =>
        count({ x0: x - by, y0: y - by, x1: x + width + by, y1: y + height + by })
      const covered = around(0)
      if (best && covered > best.covered) continue
      let free = 0
      if (covered === 0) while (free < border.most && around(free + border.step) === 0) free += border.step
      if (!best || covered < best.covered || free > best.border)
        best = { at: { x, y }, covered, border: free }
    }
  return best ? { at: best.at, covered: best.covered } : null
}
