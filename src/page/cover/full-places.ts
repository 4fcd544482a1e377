import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { type CellWeights, fullerPlace, weighCells } from './cell-weights.ts'
import { cellCount, columnSpans, type HeldCells, heldCells } from './column-spans.ts'
import { latticePitch } from './lattice.ts'
import type { LooseLattice } from './loose-lattice.ts'
import { movesOff, notchIn, notchWithRoom } from './notch-room.ts'
import type { OffsetCount } from './offset-counts.ts'
import { type Place, type Search, thin } from './places.ts'
import { pointsIn } from './shown-points.ts'
import { type TurnedRun, turnPoints, turnRuns } from './turned-run.ts'

/** What one page should keep whole. */
export interface Kept {
  /** always */
  readonly points: readonly Point[]
  /** where no more pages are needed for it */
  readonly notch: readonly Point[]
}

/** How many of the places found are weighed by their emptiest page, and how many of those are improved and counted exactly. */
const weighed = 32
const finalists = 3

export const roomier = (a: OffsetCount, b: OffsetCount): number => b.room - a.room

type FullPlace = CellWeights & { readonly loose: LooseLattice; readonly clear: boolean }

/** Where level joint lines are tried in the room that they have to both sides. */
const shares = [0, 0.5, -0.5, 0.9, -0.9]

/**
 * The few of them whose emptiest pages carry the most line and that show all points whole, moved so that they carry more; fullest
 * first. None where none of them shows the points.
 */
export const fullestPlaces = (places: readonly Place[], kept: Kept): readonly FullPlace[] =>
  clearedFullest(showingPlaces(places, kept), kept)

/** Of the roomiest places those that show all points whole, the roomiest first. */
export const showingPlaces = (places: readonly Place[], kept: Kept): readonly ShowingPlace[] => {
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
  notch: notchWithRoom(notch, angle),
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
  const box = notchWithRoom(notch, loose.angle)!
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
export const widerPlaces = ({ lattices, runs, places }: Search, kept: Kept): readonly FullPlace[] => {
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
      const spans = columnSpans(turned, pitch, x)
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
