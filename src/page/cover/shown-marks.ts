import type { Box } from '../../geometry/bounds.ts'
import { pathCorners } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { coverageGrid } from './cell-grid.ts'
import { weighCells } from './cell-weights.ts'
import { climb } from './climb.ts'
import { type HeldCells, heldCells } from './column-spans.ts'
import type { Cover } from './cover.ts'
import { type Coverage, coverageAt, type FoundCoverage } from './coverage.ts'
import { latticePitch, latticePlace } from './lattice.ts'
import type { LooseLattice } from './loose-lattice.ts'
import { notchIn, notchWithRoom } from './notch-room.ts'
import { type Place, placesIn, type Search, thin } from './places.ts'
import { pointsIn } from './shown-points.ts'
import { turnPoints } from './turned-run.ts'

/** Room of a screw's mark from its middle, with its pen, mm. */
export const screwRoom = screwRing + 0.15

/** Grids looked at, and places that are improved and counted exactly. */
const turns = 24
const finalists = 6

/** Where level joint lines are tried in the room that they have to both sides. */
const shares = [0, -0.7, 0.7]

/** Steps that joint lines are moved by at last, mm. */
const fineSteps = [12, 6, 3, 1.5, 0.75]

/** A screw is worth more than all corners of timbers: it cannot be guessed from what else is on paper. */
const screwWorth = 1000

/** Worth more than all of these: a builder measures from a point, and saws the notch finest. */
const pointWorth = 1e6
const notchWorth = 5e5

interface MarkedPlace extends Pick<Place, 'loose' | 'turned' | 'joint'> {
  readonly marks: Marks
  readonly worth: number
}

/** Named points, screws and corners of timbers in the frame of a lattice, x and y by turns. */
interface Marks {
  readonly named: Float64Array
  readonly screws: Float64Array
  readonly corners: Float64Array
  readonly notch: Box | null
}

/**
 * A coverage with as many pages as `from`, moved, for a ribbon turned too, so that most screws of timbers, then most corners of
 * timbers lie on a page; `from` where none shows more. No page is left with a sliver of line that had more.
 */
export const showMarks = (pattern: Pattern, cover: Cover, from: FoundCoverage): Coverage => {
  // a whole plot has them all
  if (cover === 'whole') return from
  const points = pointsOf(pattern)
  const before = worthOf(points, from)
  const all =
    points.named.length * pointWorth + notchWorth + points.screws.length * screwWorth + points.corners.length
  if (before === all) return from
  const pages = from.cells.length
  const places = markedPlaces(from.search, points, pages, before)
  if (places.length === 0) return from
  const least = Math.min(thin, from.emptiest)
  const best = places.map((place) => improved(place, pages, least)).sort((a, b) => b.worth - a.worth)
  for (const place of best) {
    if (place.worth <= before) break
    const moved = coverageAt(place, from.search.needs)
    if (moved.cells.length <= pages && moved.emptiest >= least && worthOf(points, moved) > before)
      return moved
  }
  return from
}

/** Worth of what coverages of a pattern show, as `showMarks` compares it; a whole plot shows all. */
export const shownWorth = (pattern: Pattern, cover: Cover): ((coverage: Coverage) => number) => {
  if (cover === 'whole') return () => 0
  const points = pointsOf(pattern)
  return (coverage) => worthOf(points, coverage)
}

const pointsOf = (pattern: Pattern): Points => ({
  named: pattern.points.map(({ at }) => at),
  screws: pattern.screws.flatMap(({ middles }) => middles),
  corners: pattern.markPaths.flatMap(pathCorners),
  notch: pattern.notch,
})

interface Points {
  readonly named: readonly Point[]
  readonly screws: readonly Point[]
  readonly corners: readonly Point[]
  readonly notch: readonly Point[]
}

/** Worth of what lies whole in the windows of a coverage. */
const worthOf = (points: Points, { lattice, cells }: Coverage): number => {
  const { angle, joint } = latticePlace(lattice)
  return shownIn(marksAt(points, angle), { joint, ...coverageGrid(cells) }, lattice, 0, -1)!
}

const marksAt = ({ named, screws, corners, notch }: Points, angle: number): Marks => ({
  named: turnPoints(named, angle),
  screws: turnPoints(screws, angle),
  corners: turnPoints(corners, angle),
  notch: notchWithRoom(notch, angle),
})

/**
 * The few places with no more than so many pages that are worth the most, and more than `before`, each with its level joint lines
 * where most marks are shown.
 */
const markedPlaces = (
  { places, lattices, tried, runs }: Search,
  points: Points,
  pages: number,
  before: number,
): readonly MarkedPlace[] => {
  let best: readonly MarkedPlace[] = []
  let marks: Marks | undefined
  let marked: LooseLattice | undefined
  const look = (place: Place): void => {
    const { loose, turned } = place
    // places of a lattice follow one another
    if (!marks || marked !== loose) {
      marks = marksAt(points, loose.angle)
      marked = loose
    }
    // what is worth no more is not counted to its end
    const found = shownAt(place, marks, best.length < finalists ? before : best[finalists - 1]!.worth)
    if (found)
      best = [...best, { loose, turned, marks, ...found }]
        .sort((a, b) => b.worth - a.worth)
        .slice(0, finalists)
  }
  for (const place of places) look(place)
  for (const loose of lattices.slice(tried, turns))
    if (loose.least <= pages) for (const place of placesIn(loose, runs, pages)) look(place)
  return best
}

/** The level joint lines of a place with which most is shown; null where that is worth no more than `beyond`. */
const shownAt = (
  { loose, joint, room, spans }: Place,
  marks: Marks,
  beyond: number,
): Pick<MarkedPlace, 'joint' | 'worth'> | null => {
  // does not change in this room
  const cells = heldCells(spans, loose.box, latticePitch(loose.shape), joint)
  let most = beyond
  let best: number | null = null
  for (const share of shares) {
    const up = share * (room / 2)
    const worth = shownIn(marks, cells, loose.shape, up, most)
    if (worth === null) continue
    most = worth
    best = up
  }
  return best === null ? null : { joint: { x: cells.joint.x, y: cells.joint.y + best }, worth: most }
}

/** Moved as long as more is shown on as many pages, none of them with less line than `least`. */
const improved = (place: MarkedPlace, pages: number, least: number): MarkedPlace => {
  const { loose, turned, marks } = place
  type Worth = Pick<MarkedPlace, 'joint' | 'worth'>
  const better = (at: Point, than: Worth): Worth | null => {
    const weights = weighCells(turned, loose.box, latticePitch(loose.shape), at)
    if (weights.pages > pages || weights.emptiest < least) return null
    const worth = shownIn(marks, weights, loose.shape, 0, than.worth)
    return worth === null ? null : { joint: weights.joint, worth }
  }
  const start: Worth = { joint: place.joint, worth: 0 }
  const best = climb(better(place.joint, start) ?? start, fineSteps, better)
  return { ...place, ...best }
}

/** Worth of what lies whole in windows of cells that hold line, with the joint lines `up` mm higher; null if no more than `beyond`. */
const shownIn = (
  { named, screws, corners, notch }: Marks,
  cells: HeldCells,
  shape: LooseLattice['shape'],
  up: number,
  beyond: number,
): number | null => {
  const level = cells.joint.y + up
  const points = pointWorth * pointsIn(named, cells, shape, level)
  const all = corners.length / 2
  if (points + notchWorth + (screws.length / 2) * screwWorth + all <= beyond) return null
  const placed = points + (notchIn(notch, cells, shape, level) ? notchWorth : 0)
  const held = countIn(screws, screwRoom, cells, shape, up, (beyond - placed - all) / screwWorth)
  if (held === null) return null
  const fixed = placed + held * screwWorth
  const shown = countIn(corners, 0, cells, shape, up, beyond - fixed)
  return shown === null ? null : fixed + shown
}

/** null as soon as no more than `beyond` can be. */
const countIn = (
  points: Float64Array,
  room: number,
  { joint, left, low, columns, lengths }: HeldCells,
  { width, height, overlap }: LooseLattice['shape'],
  up: number,
  beyond: number,
): number | null => {
  const px = width - overlap
  const py = height - overlap
  // a window reaches this far beyond its joint lines
  const over = overlap / 2 - room
  const { x: x0, y: y0 } = joint
  const rows = lengths.length / columns
  let count = points.length / 2
  if (count <= beyond) return null
  for (let i = 0; i < points.length; i += 2) {
    const x = points[i]! - x0
    const y = points[i + 1]! - y0 - up
    const right = Math.min(columns - 1, Math.floor((x + over) / px) - left)
    const high = Math.min(rows - 1, Math.floor((y + over) / py) - low)
    let held = false
    for (let row = Math.max(0, Math.floor((y - over) / py) - low); row <= high && !held; row++)
      for (let column = Math.max(0, Math.floor((x - over) / px) - left); column <= right && !held; column++)
        held = lengths[row * columns + column]! > 0
    if (!held && --count <= beyond) return null
  }
  return count
}
