import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { latticePitch } from './lattice.ts'
import type { LooseLattice } from './loose-lattice.ts'
import { type OffsetCount, offsetCounts } from './offset-counts.ts'
import { type TurnedRun, turnRuns } from './turned-run.ts'

/**
 * Grids tried that cannot do with fewer pages than are found, as one of them may have fuller pages; all of them where the
 * emptiest page is thinner than this, mm.
 */
export const turns = 12
export const thin = 40

/** A place of a lattice, and what is needed in the frame of that lattice. */
export interface Place extends OffsetCount {
  readonly loose: LooseLattice
  readonly turned: readonly TurnedRun[]
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

/** The places that take the fewest pages; `most`: there are some with no more. */
export const placesOf = (
  lattices: readonly LooseLattice[],
  runs: readonly (readonly Point[])[],
  turns: number,
  most: number,
): readonly Place[] => {
  let places: Place[] = []
  let fewest = most
  for (const [tried, loose] of lattices.entries()) {
    // a lattice whose bound is no better than what is found need not be counted
    if (loose.least > fewest || (loose.least === fewest && tried >= turns)) break
    const found = placesIn(loose, runs, fewest)
    if (found.length === 0) continue
    if (found[0]!.pages < fewest) places = []
    fewest = found[0]!.pages
    for (const place of found) places.push(place)
  }
  return places
}

/** The places of one lattice that take the fewest pages, if no more than `most`. */
export const placesIn = (
  loose: LooseLattice,
  runs: readonly (readonly Point[])[],
  most: number,
): readonly Place[] => {
  const turned = turnRuns(runs, loose.angle)
  const places: Place[] = []
  for (const { joint, pages, room, spans } of offsetCounts(
    turned,
    loose.box,
    latticePitch(loose.shape),
    most,
  ))
    places.push({ joint, pages, room, spans, loose, turned })
  return places
}

/** Where joint lines lie in the frame of a lattice. */
export interface Placed {
  readonly loose: Pick<LooseLattice, 'shape' | 'angle'>
  readonly joint: Point
}
