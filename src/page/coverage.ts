import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { pathLength } from '../geometry/length.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type Cell, cellsConnected, cellsTouched, type Lattice, latticeAt } from './lattice.ts'
import { type Layout, layoutSize } from './sheet.ts'

/** whole: every page that the outline or a mark touches; line: only what is traced, and what places it. */
export const covers = ['whole', 'line'] as const
export type Cover = (typeof covers)[number]

export interface Coverage {
  readonly lattice: Lattice
  /** bottom row first, left to right */
  readonly cells: readonly Cell[]
}

const neededPaths = (pattern: Pattern, cover: Cover): readonly Path[] =>
  cover === 'whole' ? [pattern.outline, ...pattern.markPaths] : [pattern.line]

/** Offsets tried along each axis of the lattice, for each layout; and how many of the best are then counted exactly. */
const tries = 16
const finalists = 3

/**
 * The lattice with the fewest pages, its rows along the panel's bottom edge. Among equals the one whose emptiest page
 * carries the most line, so that no page holds a mere sliver. Same pattern, same lattice.
 */
export const coverPattern = (pattern: Pattern, cover: Cover, window: Box, overlap: number): Coverage => {
  const needs = neededPaths(pattern, cover)
  const size = needs.reduce((sum, path) => sum + pathLength(path), 0)
  const points = needs.flatMap((path) => pathSample(path, Math.max(4, size / 300)))
  const counted = (['portrait', 'landscape'] satisfies Layout[]).flatMap((layout) => {
    const shape = { layout, overlap, ...layoutSize(window, layout) }
    const pitch = { x: shape.width - overlap, y: shape.height - overlap }
    return pageCounts(points, pitch, overlap).map((count) => ({ ...count, shape }))
  })
  return counted
    .sort((a, b) => a.pages - b.pages || b.least - a.least)
    .slice(0, finalists)
    .map(({ shape, offset }) => {
      const lattice = latticeAt(shape, 0, offset)
      const touched = cellsTouched(lattice, needs)
      return { lattice, cells: cellsConnected(touched), least: Math.min(...touched.map((c) => c.length)) }
    })
    .reduce((best, found) => {
      const fewer = best.cells.length - found.cells.length
      return fewer > 0 || (fewer === 0 && found.least > best.least) ? found : best
    })
}

/** For each offset tried: how many cells hold points, and how many points the emptiest of them holds. */
const pageCounts = (points: readonly Point[], pitch: Point, overlap: number) => {
  const box = pointsBounds(points)
  const columns = Math.ceil((box.x1 - box.x0) / pitch.x) + 1
  const rows = Math.ceil((box.y1 - box.y0) / pitch.y) + 1
  // the first joint lines lie up to one pitch before the box, never on it
  const ahead = (i: number, size: number): number => ((i + 0.5) / tries) * size
  const indexes = (values: readonly number[], low: number, size: number): readonly Int32Array[] =>
    Array.from({ length: tries }, (_, i) =>
      Int32Array.from(values, (value) => (value - low + ahead(i, size)) / size),
    )
  const columnOf = indexes(
    points.map((p) => p.x),
    box.x0,
    pitch.x,
  )
  const rowOf = indexes(
    points.map((p) => p.y),
    box.y0,
    pitch.y,
  )
  const counts = new Uint32Array(columns * rows)
  const found: { readonly offset: Point; readonly pages: number; readonly least: number }[] = []
  for (let i = 0; i < tries; i++)
    for (let k = 0; k < tries; k++) {
      const [column, row] = [columnOf[i]!, rowOf[k]!]
      counts.fill(0)
      for (let n = 0; n < points.length; n++) counts[row[n]! * columns + column[n]!]!++
      let [pages, least] = [0, points.length]
      for (let c = 0; c < counts.length; c++) {
        const count = counts[c]!
        if (count === 0) continue
        pages++
        if (count < least) least = count
      }
      const joint = { x: box.x0 - ahead(i, pitch.x), y: box.y0 - ahead(k, pitch.y) }
      found.push({ offset: { x: joint.x - overlap / 2, y: joint.y - overlap / 2 }, pages, least })
    }
  return found
}
