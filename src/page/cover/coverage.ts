import type { Box } from '../../geometry/bounds.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { type CellWeights, fullerPlace, weighCells } from './cell-weights.ts'
import { cellCount, columnSpans, type HeldCells, heldCells } from './column-spans.ts'
import type { Cover } from './cover.ts'
import { type Cell, cellsConnected, cellsTouched, type Lattice, latticeAt, latticePitch } from './lattice.ts'
import { type Carried, type LooseLattice, looseLattices } from './loose-lattice.ts'
import { movesOff, notchBox, notchIn } from './notch-room.ts'
import { type OffsetCount, offsetCounts } from './offset-counts.ts'
import { pointsIn, pointsOn } from './shown-points.ts'
import { type TurnedRun, turnPoints, turnRuns } from './turned-run.ts'

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
export const patternCover = (pattern: Pattern, cover: Cover, window: Box, overlap: number): PatternCover => {
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

const roomier = (a: OffsetCount, b: OffsetCount): number => b.room - a.room

/** The cells of a place, and whether they are as many as were counted and show all points whole. */
const exactly = (
  place: CountedPlace,
  needs: readonly Path[],
  { points }: Kept,
): Coverage & { readonly holds: boolean } => {
  const { lattice, cells } = coverageAt(place, needs)
  return {
    lattice,
    cells,
    holds: cells.length === place.pages && pointsOn(points, lattice, cells) === points.length,
  }
}

const bestCoverage = (
  { needs, runs, lattices }: Loose,
  kept: Kept,
  sure: CountedPlace | null,
): FoundCoverage => {
  let tried = turns
  let places = placesOf(lattices, runs, turns)
  let best = fullestPlaces(places, kept)
  if ((best.length === 0 || best[0]!.emptiest < thin) && lattices.length > turns) {
    tried = lattices.length
    places = placesOf(lattices, runs, tried)
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
      const { lattice, cells, holds } = exactly(place, needs, kept)
      if (holds) return { lattice, cells, search }
      if (!fallback || cells.length < fallback.cells.length) fallback = { lattice, cells, search }
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
  const { runs, lattices } = looseLattices(pattern, cover, window, overlap)
  let fewest = most + 1
  for (const loose of lattices) {
    if (loose.least >= fewest) break
    const turned = turnRuns(runs, loose.angle)
    const [found] = offsetCounts(turned, loose.box, latticePitch(loose.shape), fewest - 1)
    if (found) fewest = found.pages
  }
  return fewest
}

/** What one page should keep whole. */
interface Kept {
  /** always */
  readonly points: readonly Point[]
  /** where no more pages are needed for it */
  readonly notch: readonly Point[]
}

type Placed = Pick<Place, 'joint' | 'loose'>

/** Exact: what cells are touched once the joint lines lie in their place. */
export const coverageAt = ({ loose, joint }: Placed, needs: readonly Path[]): Coverage => {
  const half = loose.shape.overlap / 2
  const lattice = latticeAt(loose.shape, loose.angle, { x: joint.x - half, y: joint.y - half })
  return { lattice, cells: cellsConnected(cellsTouched(lattice, needs)) }
}

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

type FullPlace = CellWeights & { readonly loose: LooseLattice; readonly clear: boolean }

/** Where level joint lines are tried in the room that they have to both sides. */
const shares = [0, 0.5, -0.5, 0.9, -0.9]

/**
 * The few of them whose emptiest pages carry the most line and that show all points whole, moved so that they carry more; fullest
 * first. None where none of them shows the points.
 */
const fullestPlaces = (places: readonly Place[], kept: Kept): readonly FullPlace[] =>
  clearedFullest(showingPlaces(places, kept), kept)

/** Of the roomiest places those that show all points whole, the roomiest first. */
const showingPlaces = (places: readonly Place[], kept: Kept): readonly ShowingPlace[] => {
  const roomiest = [...places].sort(roomier)
  const framed = new Map<LooseLattice, Framed>()
  const showing = (some: readonly Place[]) =>
    some.flatMap((place) => {
      const own = framed.get(place.loose) ?? framedKept(place.loose, kept)
      framed.set(place.loose, own)
      return showingPlace(place, own) ?? []
    })
  let found = showing(roomiest.slice(0, weighed))
  for (let i = weighed; found.length === 0 && i < roomiest.length; i += weighed)
    found = showing(roomiest.slice(i, i + weighed))
  return found
}

const clearedFullest = (found: readonly ShowingPlace[], kept: Kept): readonly FullPlace[] =>
  fullest(found.some(({ clear }) => clear) ? found : found.map((place) => clearedPlace(place, kept)))

type ShowingPlace = FullPlace & {
  readonly turned: readonly TurnedRun[]
  readonly shows: (cells: HeldCells) => boolean
}

/** The same in the frame of a lattice. */
interface Framed {
  readonly points: Float64Array
  readonly notch: Box | null
}

const framedKept = ({ angle }: LooseLattice, { points, notch }: Kept): Framed => ({
  points: turnPoints(points, angle),
  notch: notchBox(notch, angle),
})

/** A place with its level joint lines where all points are whole, off the notch if it can; null where they are not. */
const showingPlace = (
  { loose, turned, joint, room, spans }: Omit<Place, 'pages'>,
  { points, notch: box }: Framed,
): ShowingPlace | null => {
  const pitch = latticePitch(loose.shape)
  const shown = (cells: HeldCells): boolean => 2 * pointsIn(points, cells, loose.shape) === points.length
  let first: ShowingPlace | null = null
  // without room all of them are one
  for (const share of room === 0 ? [0] : shares) {
    const at = { x: joint.x, y: joint.y + share * (room / 2) }
    if (!shown(heldCells(spans, loose.box, pitch, at))) continue
    const weights = weighCells(turned, loose.box, pitch, at)
    const clear = notchIn(box, weights, loose.shape)
    const shows = clear
      ? (other: HeldCells): boolean => notchIn(box, other, loose.shape) && shown(other)
      : shown
    const place = { loose, turned, shows, clear, ...weights }
    if (clear) return place
    first ??= place
  }
  return first
}

/** A place whose joint lines run through the notch, moved the least that takes them off it, where that takes no more pages. */
const clearedPlace = (place: ShowingPlace, { notch }: Kept): ShowingPlace => {
  const { loose, turned, shows: shown, clear: _, ...from } = place
  const pitch = latticePitch(loose.shape)
  const box = notchBox(notch, loose.angle)!
  for (const joint of movesOff(box, from.joint, pitch)) {
    const weights = weighCells(turned, loose.box, pitch, joint)
    const shows = (other: HeldCells): boolean => notchIn(box, other, loose.shape) && shown(other)
    if (weights.pages <= from.pages && shows(weights))
      return { loose, turned, shows, clear: true, ...weights }
  }
  return place
}

const fullest = (places: readonly ShowingPlace[]): readonly FullPlace[] =>
  [...places]
    .sort(fuller)
    .slice(0, finalists)
    .map(({ loose, turned, shows, clear, ...from }) => ({
      loose,
      clear,
      ...fullerPlace(turned, loose.box, latticePitch(loose.shape), from, shows),
    }))
    .sort(fuller)

/** No sliver before one; of these what keeps off the notch, then what has the most line on its emptiest page. */
const fuller = (a: FullPlace, b: FullPlace): number =>
  Number(b.emptiest >= thin) - Number(a.emptiest >= thin) ||
  Number(b.clear) - Number(a.clear) ||
  b.emptiest - a.emptiest

/** Lattices looked at, and places tried on all of them together, where more pages than the fewest must be taken. */
const wider = { lattices: 8, tries: 4000 } as const

/** Places in even steps that show all points whole, with as few pages more as that takes. */
const widerPlaces = ({ lattices, runs, places }: Search, kept: Kept): readonly FullPlace[] => {
  const fewest = places[0]!.pages
  const some = lattices.filter(({ least }) => least <= fewest + 1).slice(0, wider.lattices)
  const count = Math.floor(Math.sqrt(wider.tries / some.length))
  const steps = Array.from({ length: count }, (_, i) => (i + 0.5) / count)
  let found: ShowingPlace[] = []
  for (const loose of some) {
    const turned = turnRuns(runs, loose.angle)
    const framed = framedKept(loose, kept)
    const pitch = latticePitch(loose.shape)
    for (const u of steps) {
      const x = loose.box.x0 - u * pitch.x
      const spans = columnSpans(turned, loose.box, pitch, x)
      for (const v of steps) {
        const y = loose.box.y0 - v * pitch.y
        const pages = cellCount(spans, pitch.y, y)
        if (pages <= fewest || pages > (found[0]?.pages ?? pages)) continue
        const place = showingPlace({ loose, turned, joint: { x, y }, room: 0, spans }, framed)
        if (!place) continue
        if (found[0] && place.pages < found[0].pages) found = []
        found.push(place)
      }
    }
  }
  const clear = found.filter((place) => place.clear)
  return clear.length > 0 ? fullest(clear) : clearedFullest(found, kept)
}
