import type { Box } from '../geometry/bounds.ts'
import { convexHull } from '../geometry/hull.ts'
import { pathLength } from '../geometry/length.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type CellWeights, fullerPlace, weighCells } from './cell-weights.ts'
import { type Cell, cellsConnected, cellsTouched, type Lattice, latticeAt, latticePitch } from './lattice.ts'
import { type OffsetCount, offsetCounts } from './offset-counts.ts'
import { type Layout, layoutSize } from './sheet.ts'

/**
 * whole: every page that the outline or a mark touches; line: only what is traced, and what places it, in rows along the
 * bottom edge; ribbon: the same with the rows turned so that they follow the curve.
 */
export const covers = ['whole', 'line', 'ribbon'] as const
export type Cover = (typeof covers)[number]

export interface Coverage {
  readonly lattice: Lattice
  /** bottom row first, left to right */
  readonly cells: readonly Cell[]
}

const neededPaths = (pattern: Pattern, cover: Cover): readonly Path[] =>
  cover === 'whole' ? [pattern.outline, ...pattern.markPaths] : [pattern.line]

/** Rows of a ribbon are turned by up to 45° either way (more is the other layout), in these steps. */
const angleStep = Math.PI / 360
const angleSteps = 90

/**
 * Grids tried that cannot do with fewer pages than are found, as one of them may have fuller pages; all of them where the
 * emptiest page is thinner than this, mm.
 */
const turns = 12
const thin = 40

/** How many of the places found are weighed by their emptiest page, and how many of those are improved and counted exactly. */
const weighed = 32
const finalists = 3

interface Grid {
  readonly shape: Pick<Lattice, 'layout' | 'width' | 'height' | 'overlap'>
  readonly angle: number
  /** of what is needed, in the frame of the grid */
  readonly box: Box
  /** no offset of this grid can do with fewer pages */
  readonly least: number
  /** pitches that what is needed spans, across and up together: the fewer, the farther the grid can be moved */
  readonly spanned: number
}

/**
 * The grid with the fewest pages. Among equals the one whose emptiest page carries the most line, so that no page holds a
 * mere sliver. What is needed keeps half the overlap from the edge of every window; pages of a set hang together by whole
 * edges. Same pattern, same grid.
 */
export const coverPattern = (pattern: Pattern, cover: Cover, window: Box, overlap: number): Coverage => {
  const needs = neededPaths(pattern, cover)
  const size = needs.reduce((sum, path) => sum + pathLength(path), 0)
  // steps shorter than any page
  const spacing = Math.min(Math.max(6, size / 200), 30)
  const runs = needs.map((path) => pathSample(path, spacing))
  // many turns look at few points
  const hull = cover === 'ribbon' ? convexHull(runs.flat()) : runs.flat()
  const angles =
    cover === 'ribbon'
      ? Array.from({ length: 2 * angleSteps + 1 }, (_, i) => (i - angleSteps) * angleStep)
      : [0]
  const grids = angles
    .flatMap((angle) => gridsAt(hull, angle, window, overlap))
    .sort((a, b) => a.least - b.least || a.spanned - b.spanned)
  let best = fullestPlaces(placesOf(grids, runs, turns))
  if (best[0]!.emptiest < thin && grids.length > turns)
    best = fullestPlaces(placesOf(grids, runs, grids.length))
  let fallback: Coverage | undefined
  for (const { grid, joint, pages } of best) {
    const lattice = latticeAt(grid.shape, grid.angle, { x: joint.x - overlap / 2, y: joint.y - overlap / 2 })
    const cells = cellsConnected(cellsTouched(lattice, needs))
    if (cells.length === pages) return { lattice, cells }
    if (!fallback || cells.length < fallback.cells.length) fallback = { lattice, cells }
  }
  return fallback!
}

/** A place of a grid, and what is needed in the frame of that grid. */
interface Place extends OffsetCount {
  readonly grid: Grid
  readonly turned: readonly Float64Array[]
}

/** The places that take the fewest pages. */
const placesOf = (
  grids: readonly Grid[],
  runs: readonly (readonly Point[])[],
  turns: number,
): readonly Place[] => {
  let places: Place[] = []
  let fewest = Number.POSITIVE_INFINITY
  for (const [tried, grid] of grids.entries()) {
    // a grid whose bound is no better than what is found need not be counted
    if (grid.least > fewest || (grid.least === fewest && tried >= turns)) break
    const turned = turnRuns(runs, grid.angle)
    for (const found of offsetCounts(turned, grid.box, latticePitch(grid.shape), fewest)) {
      if (found.pages < fewest) places = []
      fewest = found.pages
      places.push({ ...found, grid, turned })
    }
  }
  return places
}

/** The few of them whose emptiest pages carry the most line, moved so that they carry more; fullest first. */
const fullestPlaces = (places: readonly Place[]): readonly (CellWeights & { readonly grid: Grid })[] =>
  [...places]
    .sort((a, b) => b.room - a.room)
    .slice(0, weighed)
    .map(({ grid, turned, joint }) => ({
      grid,
      turned,
      ...weighCells(turned, grid.box, latticePitch(grid.shape), joint),
    }))
    .sort((a, b) => b.emptiest - a.emptiest)
    .slice(0, finalists)
    .map(({ grid, turned, ...from }) => ({
      grid,
      ...fullerPlace(turned, grid.box, latticePitch(grid.shape), from),
    }))
    .sort((a, b) => b.emptiest - a.emptiest)

const turnRuns = (runs: readonly (readonly Point[])[], angle: number): readonly Float64Array[] => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return runs.map((run) => {
    const turned = new Float64Array(2 * run.length)
    for (let i = 0; i < run.length; i++) {
      const { x, y } = run[i]!
      turned[2 * i] = x * cos + y * sin
      turned[2 * i + 1] = y * cos - x * sin
    }
    return turned
  })
}

/**
 * Both layouts at one angle. A line in one piece that spans w × h crosses at least ⌊w/pitch⌋ and ⌊h/pitch⌋ joint lines,
 * however the grid is moved, and each crossing leads to another page. `spanning`: of all points those that reach farthest, at least.
 */
const gridsAt = (
  spanning: readonly Point[],
  angle: number,
  window: Box,
  overlap: number,
): readonly Grid[] => {
  const box = turnedBounds(spanning, angle)
  return (['portrait', 'landscape'] satisfies Layout[]).map((layout) => {
    const shape = { layout, overlap, ...layoutSize(window, layout) }
    const across = (box.x1 - box.x0) / (shape.width - overlap)
    const up = (box.y1 - box.y0) / (shape.height - overlap)
    return { shape, angle, box, least: 1 + Math.floor(across) + Math.floor(up), spanned: across + up }
  })
}

const turnedBounds = (points: readonly Point[], angle: number): Box => {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (const p of points) {
    const x = p.x * cos + p.y * sin
    const y = p.y * cos - p.x * sin
    if (x < x0) x0 = x
    if (x > x1) x1 = x
    if (y < y0) y0 = y
    if (y > y1) y1 = y
  }
  return { x0, y0, x1, y1 }
}
