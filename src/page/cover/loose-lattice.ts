import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { pathLength } from '../../geometry/length.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { convexHull } from '../../geometry/polygon/hull.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { type Layout, layoutSize } from '../sheet/sheet.ts'
import type { Cover } from './cover.ts'
import type { Lattice } from './lattice.ts'
import { hullBounds } from './turned-run.ts'

/** Rows of pages in one layout and at one angle, their joint lines still free to move: `latticeAt` puts them in a place. */
export interface LooseLattice {
  readonly shape: Pick<Lattice, 'layout' | 'width' | 'height' | 'overlap'>
  readonly angle: number
  /** of what is needed, in the frame of the lattice */
  readonly box: Box
  /** no offset of this lattice can do with fewer pages */
  readonly least: number
  /** pitches that what is needed spans, across and up together: the fewer, the farther the lattice can be moved */
  readonly spanned: number
}

/** Of a pattern what pages may have to carry. */
export type Carried = Pick<Pattern, 'cut' | 'line' | 'markPaths'>

/** What pages must carry. */
const neededPaths = (pattern: Carried, cover: Cover): readonly Path[] =>
  cover === 'whole' ? [pattern.cut, ...pattern.markPaths] : [pattern.line]

/** Rows of a ribbon are turned by up to 45° either way (more is the other layout), in these steps. */
const angleStep = Math.PI / 360
const angleSteps = 90

/** What pages must carry, the same as broken lines, and the lattices that may carry it, those first that may do with the fewest. */
export const looseLattices = (
  pattern: Carried,
  cover: Cover,
  window: Box,
  overlap: number,
): {
  readonly needs: readonly Path[]
  readonly runs: readonly (readonly Point[])[]
  readonly lattices: readonly LooseLattice[]
} => {
  const needs = neededPaths(pattern, cover)
  const size = needs.reduce((sum, path) => sum + pathLength(path), 0)
  // steps shorter than any page
  const spacing = Math.min(Math.max(6, size / 200), 30)
  const runs = needs.map((path) => pathSample(path, spacing))
  const lattices =
    cover === 'ribbon'
      ? turnedLattices(runs.flat(), window, overlap)
      : [...looseAt(pointsBounds(runs.flat()), 0, shapesOf(window, overlap))]
  lattices.sort((a, b) => a.least - b.least || a.spanned - b.spanned)
  return { needs, runs, lattices }
}

/** No cover of a pattern takes fewer pages, if its line, and so its cut, goes through all of these points in one piece. */
export const leastPages = (through: readonly Point[], window: Box, overlap: number): number => {
  return Math.min(...turnedLattices(through, window, overlap).map(({ least }) => least))
}

/** At each angle of a ribbon. */
const turnedLattices = (points: readonly Point[], window: Box, overlap: number): LooseLattice[] => {
  const angles = Array.from({ length: 2 * angleSteps + 1 }, (_, i) => (i - angleSteps) * angleStep)
  const shapes = shapesOf(window, overlap)
  return hullBounds(convexHull(points), angles).flatMap((box, i) => looseAt(box, angles[i]!, shapes))
}

const shapesOf = (window: Box, overlap: number): readonly LooseLattice['shape'][] =>
  (['portrait', 'landscape'] satisfies Layout[]).map((layout) => ({
    layout,
    overlap,
    ...layoutSize(window, layout),
  }))

/**
 * Both layouts at one angle. A line in one piece that spans w × h crosses at least ⌊w/pitch⌋ and ⌊h/pitch⌋ joint lines,
 * however the lattice is moved, and each crossing leads to another page. `box`: what bounds it in the frame of the lattice.
 */
const looseAt = (
  box: Box,
  angle: number,
  shapes: readonly LooseLattice['shape'][],
): readonly LooseLattice[] =>
  shapes.map((shape) => {
    const across = (box.x1 - box.x0) / (shape.width - shape.overlap)
    const up = (box.y1 - box.y0) / (shape.height - shape.overlap)
    return { shape, angle, box, least: 1 + Math.floor(across) + Math.floor(up), spanned: across + up }
  })
