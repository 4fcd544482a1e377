import type { Box } from '../../geometry/bounds.ts'
import type { Path } from '../../geometry/path.ts'
import type { SideLines } from '../../pattern/side-lines.ts'
import { cellsTouched } from './cells-touched.ts'
import { heldCells } from './column-spans.ts'
import type { Cover } from './cover.ts'
import { fullestPlaces, type Kept, roomier, showingPlaces, widerPlaces } from './full-places.ts'
import { type Cell, cellsConnected, type Lattice, latticeAt, latticePitch } from './lattice.ts'
import { type Carried, looseLattices } from './loose-lattice.ts'
import { offsetCounts } from './offset-counts.ts'
import { type Place, type Placed, placesOf, type Search, thin, turns } from './places.ts'
import { pointsIn, pointsOn } from './shown-points.ts'
import { turnPoints, turnRuns } from './turned-run.ts'

export interface Coverage {
  readonly lattice: Lattice
  /** bottom row first, left to right */
  readonly cells: readonly Cell[]
  /** the least line that one of those carries which carry any, mm */
  readonly emptiest: number
}

/** A coverage, and what else was looked at on the way to it. */
export interface FoundCoverage extends Coverage {
  readonly search: Search
}

/** A pattern on its pages: how many they are is known before their best place is. */
export interface PatternCover {
  readonly pages: number
  /** found when it is first asked for */
  readonly found: () => FoundCoverage
}

/**
 * The lattice with the fewest pages on which the pattern's named points lie whole. Among equals one whose joints keep off the notch, of
 * these the one whose emptiest page carries the most line, so that no page holds a mere sliver. What is needed keeps half the overlap from the edge of every window; pages
 * of a set hang together by whole edges. Same pattern, same lattice. `showMarks` then brings more of the timbers onto as many pages.
 */
export const patternCover = (
  pattern: SideLines,
  cover: Cover,
  window: Box,
  overlap: number,
): PatternCover => {
  const loose = looseLattices(pattern, cover, window, overlap)
  const kept: Kept = { points: pattern.points.map(({ at }) => at), notch: pattern.notch }
  const sure = surePlace(loose, kept)
  let best: FoundCoverage | undefined
  const found = (): FoundCoverage => {
    best ??= bestCoverage(loose, kept, sure)
    return best
  }
  return { pages: sure?.pages ?? found().cells.length, found }
}

type Loose = ReturnType<typeof looseLattices>

type CountedPlace = Placed & Pick<Place, 'pages'>

/** Lattices and, of each, places looked at for one that cannot be bettered. */
const glanced = { lattices: 12, places: 2 } as const

/** A place of the fewest pages that any lattice takes, its points whole; null where there is none at a glance. */
const surePlace = ({ lattices, runs, needs }: Loose, kept: Kept): CountedPlace | null => {
  const { least } = lattices[0]!
  for (const loose of lattices.slice(0, glanced.lattices)) {
    if (loose.least > least) break
    const pitch = latticePitch(loose.shape)
    const points = turnPoints(kept.points, loose.angle)
    let glances = 0
    for (const { joint, spans } of [
      ...offsetCounts(turnRuns(runs, loose.angle), loose.box, pitch, least),
    ].sort(roomier)) {
      const held = heldCells(spans, loose.box, pitch, joint)
      if (2 * pointsIn(points, held, loose.shape) < points.length) continue
      const place = { loose, joint: held.joint, pages: least }
      if (exactly(place, needs, kept).holds) return place
      if (++glances === glanced.places) break
    }
  }
  return null
}

/** The cells of a place, and whether they are as many as were counted and show all points whole. */
const exactly = (
  place: CountedPlace,
  needs: readonly Path[],
  { points }: Kept,
): Coverage & { readonly holds: boolean } => {
  const coverage = coverageAt(place, needs)
  const { lattice, cells } = coverage
  return {
    ...coverage,
    holds: cells.length === place.pages && pointsOn(points, lattice, cells) === points.length,
  }
}

const bestCoverage = (
  { needs, runs, lattices }: Loose,
  kept: Kept,
  sure: CountedPlace | null,
): FoundCoverage => {
  const most = sure?.pages ?? Number.POSITIVE_INFINITY
  let tried = turns
  let places = placesOf(lattices, runs, turns, most)
  let best = fullestPlaces(places, kept)
  if ((best.length === 0 || best[0]!.emptiest < thin) && lattices.length > turns) {
    tried = lattices.length
    places = placesOf(lattices, runs, tried, most)
    best = fullestPlaces(places, kept)
  }
  const search = { needs, runs, lattices, tried, places }
  // else as they are, not moved; else on more pages, else without their points whole
  const tries = [
    () => best,
    () => showingPlaces(places, kept),
    () => (sure ? [sure] : []),
    () => widerPlaces(search, kept),
    () => fullestPlaces(places, { points: [], notch: [] }),
  ]
  let fallback: FoundCoverage | undefined
  for (const more of tries)
    for (const place of more()) {
      const { holds, ...coverage } = exactly(place, needs, kept)
      if (holds) return { ...coverage, search }
      if (!fallback || coverage.cells.length < fallback.cells.length) fallback = { ...coverage, search }
    }
  return fallback!
}

/** The fewest pages on which a pattern finds room, if no more than `most`; what should lie whole may take more. */
export const leastCover = (
  pattern: Carried,
  cover: Cover,
  window: Box,
  overlap: number,
  most: number,
): number => {
  const { runs, lattices } = looseLattices(pattern, cover, window, overlap, most)
  let fewest = most + 1
  for (const loose of lattices) {
    if (loose.least >= fewest) break
    const turned = turnRuns(runs, loose.angle)
    const [found] = offsetCounts(turned, loose.box, latticePitch(loose.shape), fewest - 1)
    if (found) fewest = found.pages
  }
  return fewest
}

/** Exact: what cells are touched once the joint lines lie in their place. */
export const coverageAt = ({ loose, joint }: Placed, needs: readonly Path[]): Coverage => {
  const half = loose.shape.overlap / 2
  const lattice = latticeAt(loose.shape, loose.angle, { x: joint.x - half, y: joint.y - half })
  const touched = cellsTouched(lattice, needs)
  return {
    lattice,
    cells: cellsConnected(touched),
    emptiest: Math.min(...touched.map(({ length }) => length)),
  }
}
