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
const angles: readonly number[] = Array.from(
  { length: 2 * angleSteps + 1 },
  (_, i) => (i - angleSteps) * angleStep,
)

/** What pages must carry, the same as broken lines, and the lattices that may carry it on `most` pages, those first that may do with the fewest. */
export const looseLattices = (
  pattern: Carried,
  cover: Cover,
  window: Box,
  overlap: number,
  most = Number.POSITIVE_INFINITY,
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
  const points = runs.flat()
  const shapes = shapesOf(window, overlap)
  const all =
    cover === 'ribbon'
      ? turnedBoxes(points).flatMap((box, i) => looseAt(box, angles[i]!, shapes, most))
      : looseAt(pointsBounds(points), 0, shapes, most)
  const lattices = all.toSorted((a, b) => a.least - b.least || a.spanned - b.spanned)
  return { needs, runs, lattices }
}

/** No cover of a pattern takes fewer pages, if its line, and so its cut, goes through all of these points in one piece. */
export const leastPages = (through: readonly Point[], window: Box, overlap: number): number => {
  const shapes = shapesOf(window, overlap)
  let least = Number.POSITIVE_INFINITY
  for (const box of turnedBoxes(through))
    for (const shape of shapes) least = Math.min(least, leastOf(acrossOf(box, shape), upOf(box, shape)))
  return least
}

/** What bounds points in the frame of a lattice at each angle of a ribbon. */
const turnedBoxes = (points: readonly Point[]): readonly Box[] => hullBounds(convexHull(points), angles)

const shapesOf = (window: Box, overlap: number): readonly LooseLattice['shape'][] =>
  (['portrait', 'landscape'] satisfies Layout[]).map((layout) => ({
    layout,
    overlap,
    ...layoutSize(window, layout),
  }))

/** Pitches of pages that a box spans. */
const acrossOf = ({ x0, x1 }: Box, { width, overlap }: LooseLattice['shape']): number =>
  (x1 - x0) / (width - overlap)
const upOf = ({ y0, y1 }: Box, { height, overlap }: LooseLattice['shape']): number =>
  (y1 - y0) / (height - overlap)

/**
 * A line in one piece that spans w × h crosses at least ⌊w/pitch⌋ and ⌊h/pitch⌋ joint lines, however the lattice is moved, and
 * each crossing leads to another page.
 */
const leastOf = (across: number, up: number): number => 1 + Math.floor(across) + Math.floor(up)

/** The layouts at one angle that may do with `most` pages. `box`: what bounds all that is needed in the frame of the lattice. */
const looseAt = (
  box: Box,
  angle: number,
  shapes: readonly LooseLattice['shape'][],
  most: number,
): readonly LooseLattice[] =>
  shapes.flatMap((shape) => {
    const across = acrossOf(box, shape)
    const up = upOf(box, shape)
    const least = leastOf(across, up)
    return least > most ? [] : [{ shape, angle, box, least, spanned: across + up }]
  })
