import { affineApply, affineRotate } from '../geometry/affine.ts'
import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { convexHull } from '../geometry/hull.ts'
import { pathLength } from '../geometry/length.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { type Cell, cellsConnected, cellsTouched, type Lattice, latticeAt } from './lattice.ts'
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

/** Grids counted by samples, and how many of the best are then counted exactly. */
const turns = 3
const finalists = 3

interface Grid {
  readonly shape: Pick<Lattice, 'layout' | 'width' | 'height' | 'overlap'>
  readonly angle: number
  /** no offset of this grid can do with fewer pages */
  readonly least: number
}

/**
 * The grid with the fewest pages. Among equals the one whose emptiest page carries the most line, so that no page holds a
 * mere sliver. What is needed keeps half the overlap from the edge of every window; pages of a set hang together by whole
 * edges. Same pattern, same grid.
 */
export const coverPattern = (pattern: Pattern, cover: Cover, window: Box, overlap: number): Coverage => {
  const needs = neededPaths(pattern, cover)
  const size = needs.reduce((sum, path) => sum + pathLength(path), 0)
  const spacing = Math.max(6, size / 200)
  const points = needs.flatMap((path) => pathSample(path, spacing))
  const hull = convexHull(points)
  const angles =
    cover === 'ribbon'
      ? Array.from({ length: 2 * angleSteps + 1 }, (_, i) => (i - angleSteps) * angleStep)
      : [0]
  const grids = angles
    .flatMap((angle) => gridsAt(hull, angle, window, overlap))
    .sort((a, b) => a.least - b.least || Math.abs(a.angle) - Math.abs(b.angle))
  // a grid whose bound is no better than what is found need not be counted
  const counted: (OffsetCount & { readonly grid: Grid })[] = []
  let fewest = Number.POSITIVE_INFINITY
  let tried = 0
  for (const grid of grids) {
    if (grid.least > fewest || (grid.least === fewest && tried >= turns)) break
    tried++
    for (const found of offsetCounts(turnPoints(points, grid.angle), pitchOf(grid), overlap)) {
      counted.push({ ...found, grid })
      fewest = Math.min(fewest, found.pages)
    }
  }
  return counted
    .sort((a, b) => a.pages - b.pages || b.least - a.least)
    .slice(0, finalists)
    .map(({ grid, offset }) => {
      const lattice = latticeAt(grid.shape, grid.angle, offset)
      const touched = cellsTouched(lattice, needs)
      return { lattice, cells: cellsConnected(touched), least: Math.min(...touched.map((c) => c.length)) }
    })
    .reduce((best, found) => {
      const fewer = best.cells.length - found.cells.length
      return fewer > 0 || (fewer === 0 && found.least > best.least) ? found : best
    })
}

const pitchOf = ({ shape }: Grid): Point => ({
  x: shape.width - shape.overlap,
  y: shape.height - shape.overlap,
})

const turnPoints = (points: readonly Point[], angle: number): readonly Point[] => {
  const turn = affineRotate(-angle)
  return points.map((p) => affineApply(turn, p))
}

/**
 * Both layouts at one angle. A line in one piece that spans w × h crosses at least ⌊w/pitch⌋ and ⌊h/pitch⌋ joint lines,
 * however the grid is moved, and each crossing leads to another page. `hull` spans what the points span.
 */
const gridsAt = (hull: readonly Point[], angle: number, window: Box, overlap: number): readonly Grid[] => {
  const box = pointsBounds(turnPoints(hull, angle))
  return (['portrait', 'landscape'] satisfies Layout[]).map((layout) => {
    const shape = { layout, overlap, ...layoutSize(window, layout) }
    const columns = Math.floor((box.x1 - box.x0) / (shape.width - overlap))
    const rows = Math.floor((box.y1 - box.y0) / (shape.height - overlap))
    return { shape, angle, least: 1 + columns + rows }
  })
}
