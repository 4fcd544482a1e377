import { pointsBounds } from '../geometry/bounds.ts'
import type { Point } from '../geometry/point.ts'

/** Pages that a grid takes at one offset, counted by sample points. */
export interface OffsetCount {
  /** lower left corner of the window of column 0, row 0, in the grid's frame */
  readonly offset: Point
  readonly pages: number
  /** sample points on the emptiest page */
  readonly least: number
}

/** Offsets tried along each axis, besides the one that centres the points in as few columns or rows as they can have. */
const tries = 9

/**
 * Counts for a square of offsets. `points` follow one another along what is needed, in the frame of the grid; a step to a
 * cell that shares only a corner takes one more page, as pages hang together by their edges.
 */
export const offsetCounts = (
  points: readonly Point[],
  pitch: Point,
  overlap: number,
): readonly OffsetCount[] => {
  const box = pointsBounds(points)
  const x = axis(
    points.map((p) => p.x),
    box.x0,
    box.x1,
    pitch.x,
  )
  const y = axis(
    points.map((p) => p.y),
    box.y0,
    box.y1,
    pitch.y,
  )
  const columns = x.cells
  const counts = new Uint32Array(columns * y.cells)
  const found: OffsetCount[] = []
  for (const across of x.offsets)
    for (const up of y.offsets) {
      const { indexes: column } = across
      const { indexes: row } = up
      counts.fill(0)
      let pages = 0
      for (let n = 0; n < points.length; n++) {
        const cell = row[n]! * columns + column[n]!
        if (counts[cell]!++ === 0) pages++
      }
      let least = points.length
      for (let c = 0; c < counts.length; c++) if (counts[c]! > 0 && counts[c]! < least) least = counts[c]!
      for (let n = 1; n < points.length; n++)
        if (
          Math.abs(row[n]! - row[n - 1]!) + Math.abs(column[n]! - column[n - 1]!) === 2 &&
          counts[row[n]! * columns + column[n - 1]!] === 0 &&
          counts[row[n - 1]! * columns + column[n]!] === 0
        ) {
          counts[row[n]! * columns + column[n - 1]!] = 1
          pages++
          least = 1
        }
      found.push({ offset: { x: across.joint - overlap / 2, y: up.joint - overlap / 2 }, pages, least })
    }
  return found
}

/** Along one axis: where the first joint line may lie, and in which cell each value then is. */
const axis = (values: readonly number[], low: number, high: number, pitch: number) => {
  const cells = Math.ceil((high - low) / pitch) + 1
  // in the fewest cells that hold them, with the same room on both sides
  const centred = ((Math.floor((high - low) / pitch) + 1) * pitch - (high - low)) / 2
  const ahead = [centred, ...Array.from({ length: tries }, (_, i) => ((i + 0.5) / tries) * pitch)]
  return {
    cells,
    offsets: ahead.map((before) => ({
      joint: low - before,
      indexes: Int32Array.from(values, (value) => (value - low + before) / pitch),
    })),
  }
}
