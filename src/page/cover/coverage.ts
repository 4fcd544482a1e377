import type { Box } from '../../geometry/bounds.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { type CellWeights, fullerPlace, weighCells } from './cell-weights.ts'
import type { Cover } from './cover.ts'
import { type Cell, cellsConnected, cellsTouched, type Lattice, latticeAt, latticePitch } from './lattice.ts'
import { type LooseLattice, looseLattices, turnRuns } from './loose-lattice.ts'
import { type OffsetCount, offsetCounts } from './offset-counts.ts'

export interface Coverage {
  readonly lattice: Lattice
  /** bottom row first, left to right */
  readonly cells: readonly Cell[]
}

/** A coverage, and what else was looked at on the way to it. */
export interface FoundCoverage extends Coverage {
  readonly search: Search
}

/**
 * Grids tried that cannot do with fewer pages than are found, as one of them may have fuller pages; all of them where the
 * emptiest page is thinner than this, mm.
 */
const turns = 12
const thin = 40

/** How many of the places found are weighed by their emptiest page, and how many of those are improved and counted exactly. */
const weighed = 32
const finalists = 3

/**
 * The lattice with the fewest pages. Among equals the one whose emptiest page carries the most line, so that no page holds a
 * mere sliver. What is needed keeps half the overlap from the edge of every window; pages of a set hang together by whole
 * edges. Same pattern, same lattice. `showMarks` then brings more of the timbers onto as many pages.
 */
export const coverPattern = (pattern: Pattern, cover: Cover, window: Box, overlap: number): FoundCoverage => {
  const { needs, runs, lattices } = looseLattices(pattern, cover, window, overlap)
  let tried = turns
  let places = placesOf(lattices, runs, turns)
  let best = fullestPlaces(places)
  if (best[0]!.emptiest < thin && lattices.length > turns) {
    tried = lattices.length
    places = placesOf(lattices, runs, tried)
    best = fullestPlaces(places)
  }
  const search = { needs, runs, lattices, tried, places }
  let fallback: FoundCoverage | undefined
  for (const { loose, joint, pages } of best) {
    const lattice = latticeAt(loose.shape, loose.angle, {
      x: joint.x - overlap / 2,
      y: joint.y - overlap / 2,
    })
    const cells = cellsConnected(cellsTouched(lattice, needs))
    if (cells.length === pages) return { lattice, cells, search }
    if (!fallback || cells.length < fallback.cells.length) fallback = { lattice, cells, search }
  }
  return fallback!
}

/** A place of a lattice, and what is needed in the frame of that lattice. */
export interface Place extends OffsetCount {
  readonly loose: LooseLattice
  readonly turned: readonly Float64Array[]
}

export interface Search {
  readonly needs: readonly Path[]
  /** the same as broken lines */
  readonly runs: readonly (readonly Point[])[]
  readonly lattices: readonly LooseLattice[]
  /** how many of the lattices are counted, and the places of these that take the fewest pages */
  readonly tried: number
  readonly places: readonly Place[]
}

/** The places that take the fewest pages. */
const placesOf = (
  lattices: readonly LooseLattice[],
  runs: readonly (readonly Point[])[],
  turns: number,
): readonly Place[] => {
  let places: Place[] = []
  let fewest = Number.POSITIVE_INFINITY
  for (const [tried, loose] of lattices.entries()) {
    // a lattice whose bound is no better than what is found need not be counted
    if (loose.least > fewest || (loose.least === fewest && tried >= turns)) break
    const turned = turnRuns(runs, loose.angle)
    for (const found of offsetCounts(turned, loose.box, latticePitch(loose.shape), fewest)) {
      if (found.pages < fewest) places = []
      fewest = found.pages
      places.push({ ...found, loose, turned })
    }
  }
  return places
}

/** The few of them whose emptiest pages carry the most line, moved so that they carry more; fullest first. */
const fullestPlaces = (
  places: readonly Place[],
): readonly (CellWeights & { readonly loose: LooseLattice })[] =>
  [...places]
    .sort((a, b) => b.room - a.room)
    .slice(0, weighed)
    .map(({ loose, turned, joint }) => ({
      loose,
      turned,
      ...weighCells(turned, loose.box, latticePitch(loose.shape), joint),
    }))
    .sort((a, b) => b.emptiest - a.emptiest)
    .slice(0, finalists)
    .map(({ loose, turned, ...from }) => ({
      loose,
      ...fullerPlace(turned, loose.box, latticePitch(loose.shape), from),
    }))
    .sort((a, b) => b.emptiest - a.emptiest)
