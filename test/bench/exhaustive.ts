import type { Pt } from '../support/pt.ts'

/**
 * The fewest pages that any grid can do with, found by trying all: both layouts, every joint line to a millimetre, every half
 * degree. It shares nothing with src/page but the rules: a page for each cell between joint lines that the line enters, cells
 * hang together by whole edges. Slow, and fast enough for the bench.
 */
export interface Window {
  readonly width: number
  readonly height: number
  readonly overlap: number
}

export interface Steps {
  /** radians; one angle 0 for rows along the bottom edge */
  readonly angles: readonly number[]
  /** mm */
  readonly offset: number
}

export interface Found {
  readonly pages: number
  readonly landscape: boolean
  readonly angle: number
  /** a joint line's place across and up the turned drawing */
  readonly across: number
  readonly up: number
}

export const halfDegrees: readonly number[] = Array.from(
  { length: 181 },
  (_, i) => ((i - 90) * Math.PI) / 360,
)

/** Turned by −angle, so that rows are level. */
const turned = (runs: readonly (readonly Pt[])[], angle: number): readonly Float64Array[] => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return runs.map((run) => {
    const flat = new Float64Array(2 * run.length)
    run.forEach(({ x, y }, i) => {
      flat[2 * i] = x * cos + y * sin
      flat[2 * i + 1] = y * cos - x * sin
    })
    return flat
  })
}

const spans = (runs: readonly Float64Array[]): readonly [number, number, number, number] => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const run of runs)
    for (let i = 0; i < run.length; i += 2) {
      x0 = Math.min(x0, run[i]!)
      x1 = Math.max(x1, run[i]!)
      y0 = Math.min(y0, run[i + 1]!)
      y1 = Math.max(y1, run[i + 1]!)
    }
  return [x0, y0, x1, y1]
}

/** `runs`: broken lines that all hang together; so do the cells that they enter. Calls `visit` for each grid no worse than the best. */
export const exhaustive = (
  runs: readonly (readonly Pt[])[],
  { width, height, overlap }: Window,
  { angles, offset }: Steps,
  visit: (found: Found) => void = () => {},
): Found => {
  let best: Found = { pages: Infinity, landscape: false, angle: 0, across: 0, up: 0 }
  for (const angle of angles) {
    const lines = turned(runs, angle)
    const [x0, y0, x1, y1] = spans(lines)
    for (const landscape of [false, true]) {
      const [px, py] = landscape ? [height - overlap, width - overlap] : [width - overlap, height - overlap]
      // each joint line that must be crossed leads to a page of its own
      if (1 + Math.floor((x1 - x0) / px) + Math.floor((y1 - y0) / py) > best.pages) continue
      const tries = Math.ceil(py / offset)
      const columns = Math.ceil((x1 - x0) / px) + 1
      for (let across = 0; across < px; across += offset) {
        const counts = new Int32Array(tries)
        for (const extents of columnExtents(lines, x0 - across, px, columns))
          addRows(counts, extents, y0, py, offset)
        for (let k = 0; k < tries; k++) {
          const pages = counts[k]!
          if (pages > best.pages) continue
          const found = { pages, landscape, angle, across: x0 - across, up: y0 - k * offset }
          if (pages < best.pages) best = found
          visit(found)
        }
      }
    }
  }
  return best
}

/** For each column: which heights the lines have within it, as merged spans, lowest first. */
const columnExtents = (
  lines: readonly Float64Array[],
  first: number,
  pitch: number,
  columns: number,
): readonly (readonly [number, number])[][] => {
  const open: [number, number][][] = Array.from({ length: columns }, () => [])
  for (const line of lines) {
    let column = Math.floor((line[0]! - first) / pitch)
    let [low, high] = [line[1]!, line[1]!]
    for (let i = 2; i < line.length; i += 2) {
      const [x, y, xb, yb] = [line[i]!, line[i + 1]!, line[i - 2]!, line[i - 1]!]
      const to = Math.floor((x - first) / pitch)
      while (column !== to) {
        const wall = first + (to > column ? column + 1 : column) * pitch
        const at = yb + ((wall - xb) / (x - xb)) * (y - yb)
        open[column]!.push([Math.min(low, at), Math.max(high, at)])
        low = at
        high = at
        column += to > column ? 1 : -1
      }
      if (y < low) low = y
      if (y > high) high = y
    }
    open[column]!.push([low, high])
  }
  return open.map((list) => {
    list.sort((a, b) => a[0] - b[0])
    const merged: [number, number][] = []
    for (const [low, high] of list) {
      const last = merged.at(-1)
      if (last && low <= last[1]) last[1] = Math.max(last[1], high)
      else merged.push([low, high])
    }
    return merged
  })
}

/** Adds, for each offset, how many rows the spans enter: rows are told apart by number, so one that two spans share counts once. */
const addRows = (
  counts: Int32Array,
  extents: readonly (readonly [number, number])[],
  y0: number,
  py: number,
  step: number,
): void => {
  for (let k = 0; k < counts.length; k++) {
    const first = y0 - k * step
    let reached = -1
    for (const [low, high] of extents) {
      const from = Math.max(Math.floor((low - first) / py), reached + 1)
      const to = Math.floor((high - first) / py)
      if (to < from) continue
      counts[k]! += to - from + 1
      reached = to
    }
  }
}

/** The least length of line on a page of a grid, mm; 0 where a page carries so little that steps of a millimetre miss it. */
export const emptiest = (
  runs: readonly (readonly Pt[])[],
  { width, height, overlap }: Window,
  found: Found,
): number => {
  const [px, py] = found.landscape ? [height - overlap, width - overlap] : [width - overlap, height - overlap]
  const pages = new Map<number, number>()
  // steps that lie on one page follow each other
  let [last, carried] = [Number.NaN, 0]
  for (const line of turned(runs, found.angle))
    for (let i = 2; i < line.length; i += 2) {
      const [xa, ya, xb, yb] = [line[i - 2]!, line[i - 1]!, line[i]!, line[i + 1]!]
      const length = Math.sqrt((xb - xa) ** 2 + (yb - ya) ** 2)
      const parts = Math.ceil(length)
      for (let k = 0; k < parts; k++) {
        const t = (k + 0.5) / parts
        const column = Math.floor((xa + t * (xb - xa) - found.across) / px)
        // no drawing has a million rows
        const key = column * 1e6 + Math.floor((ya + t * (yb - ya) - found.up) / py)
        if (key !== last) {
          pages.set(key, pages.get(key) ?? 0)
          if (carried > 0) pages.set(last, pages.get(last)! + carried)
          last = key
          carried = 0
        }
        carried += length / parts
      }
    }
  if (carried > 0) pages.set(last, pages.get(last)! + carried)
  return pages.size < found.pages ? 0 : Math.min(...pages.values())
}
