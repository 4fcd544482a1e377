import { radiansOf } from '../../geometry/degrees.ts'
import { segmentLength } from '../../geometry/length.ts'
import { type Path, pathSegments, type Segment, segmentsPath } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { isHeld } from './cell-grid.ts'
import { type CellWeights, weighCells } from './cell-weights.ts'
import type { HeldCells } from './column-spans.ts'
import type { Cover } from './cover.ts'
import { type Coverage, coverageAt, type FoundCoverage } from './coverage.ts'
import { latticePitch, latticePlace } from './lattice.ts'
import { notchIn, notchWithRoom } from './notch-room.ts'
import { thin } from './places.ts'
import { shownWorth } from './shown-marks.ts'
import { pointsIn } from './shown-points.ts'
import { turnedBounds, turnPoints, turnRuns } from './turned-run.ts'

/** Nearer to a joint line than this a ring is on it, or leaves no room for a scale; a line that is sawn runs along it through its crosses. mm */
const ringClear = { on: screwRing + 0.6, near: screwRing + 7.2 } as const
const cutClear = 7
/** An edge of a timber along it would be hidden by its marks. mm */
const edgeClear = 8.5
const spacing = 6
/** No steeper to a joint line than this it runs along it. */
const steep = Math.tan(radiansOf(18))

/** What each counts: of a line so much a point of it. */
const cost = { on: 16, near: 8, cut: 0.5, edge: 0.05 } as const
/** So little of a line runs beside a joint at a corner. */
const corner = 2

/** Joint lines are moved in these steps, by so many at most; and how many of the best places are weighed, and looked at closely. mm */
const moves = { step: 2, most: 48, weighed: 30, finalists: 5 } as const

/** So many corners of timbers fewer may be on paper for it. */
const forgone = 6

/** What joint lines keep off, in the frame of a lattice: x and y by turns. */
interface Marred {
  readonly screws: Float64Array
  /** points of lines that are sawn: of those along upright joint lines, of those along level ones */
  readonly cut: readonly [readonly number[], readonly number[]]
  /** of edges of timbers likewise */
  readonly edges: readonly [readonly number[], readonly number[]]
}

/**
 * A coverage moved on as many pages, so that no ring of a screw lies on a joint line, and no line that is
 * sawn runs along one; as it is where it has neither, or where each other place has them too, shows less, or takes the toe off page 1.
 */
export const calmJoints = (
  pattern: Pattern,
  cover: Cover,
  from: Coverage,
  { search: { needs, runs } }: FoundCoverage,
): Coverage => {
  const { lattice } = from
  const { angle, joint } = latticePlace(lattice)
  const pitch = latticePitch(lattice)
  const turned = turnRuns(runs, angle)
  const box = turnedBounds(runs.flat(), angle)
  const marred = marredOf(pattern, angle)
  const weigh = (dx: number, dy: number): CellWeights =>
    weighCells(turned, box, pitch, { x: joint.x + dx, y: joint.y + dy })
  const before = weigh(0, 0)
  const worst = marredCost(marred, before, pitch)
  if (worst === 0) return from
  const named = turnPoints(
    pattern.points.map(({ at }) => at),
    angle,
  )
  const toe = { x: named[0]!, y: named[1]! }
  const first = toeFirst(toe, before, pitch)
  const notch = notchWithRoom(pattern.notch, angle)
  const notched = notchIn(notch, before, lattice)
  const points = pointsIn(named, before, lattice)
  const least = Math.min(thin, before.emptiest)
  const keeps = (weights: CellWeights): boolean =>
    weights.pages <= before.pages &&
    weights.emptiest >= least &&
    (!first || toeFirst(toe, weights, pitch)) &&
    pointsIn(named, weights, lattice) >= points &&
    (!notched || notchIn(notch, weights, lattice))
  const across = playOf(
    (by) => linesCost(marred, { ...before, joint: { ...before.joint, x: before.joint.x + by } }, pitch, 0),
    (by) => keeps(weigh(by, 0)),
  )
  const up = playOf(
    (by) => linesCost(marred, { ...before, joint: { ...before.joint, y: before.joint.y + by } }, pitch, 1),
    (by) => keeps(weigh(0, by)),
  )
  const better = across
    .flatMap((x) =>
      up.map((y) => ({ dx: x.by, dy: y.by, cost: x.cost + y.cost, far: Math.hypot(x.by, y.by) })),
    )
    .sort((a, b) => a.cost - b.cost || a.far - b.far)
    .slice(0, moves.weighed)
    .map(({ dx, dy }) => weigh(dx, dy))
    .filter(keeps)
  const best = cheapest(better, moves.finalists, worst, (weights, most) =>
    marredCost(marred, weights, pitch, most),
  )
  const loose = { shape: lattice, angle }
  if (best.length === 0) return from
  const worthOf = shownWorth(pattern, cover)
  const worth = worthOf(from)
  for (const { joint } of best) {
    const moved = coverageAt({ loose, joint }, needs)
    if (moved.cells.length <= from.cells.length && worthOf(moved) >= worth - forgone) return moved
  }
  return from
}

/**
 * So many places that cost the least, and less than `most`: the cheapest first, of equals the first. What cannot be among them is not
 * reckoned to its end: `costOf` may then give whatever is not below its second argument.
 */
const cheapest = <P>(
  places: readonly P[],
  count: number,
  most: number,
  costOf: (place: P, most: number) => number,
): readonly P[] => {
  const found: { readonly place: P; readonly cost: number }[] = []
  for (const place of places) {
    const limit = found.length < count ? most : found[count - 1]!.cost
    const cost = costOf(place, limit)
    if (cost >= limit) continue
    const at = found.findLastIndex((one) => one.cost <= cost) + 1
    found.splice(at, 0, { place, cost })
    if (found.length > count) found.pop()
  }
  return found.map(({ place }) => place)
}

/** How far joint lines of one direction can be moved alone, until they cost nothing, and what each place costs. */
const playOf = (
  costOf: (by: number) => number,
  keeps: (by: number) => boolean,
): readonly { readonly by: number; readonly cost: number }[] => {
  const found = [{ by: 0, cost: costOf(0) }]
  if (found[0]!.cost === 0) return found
  for (const way of [1, -1])
    for (let n = 1; n <= moves.most; n++) {
      const by = way * n * moves.step
      if (!keeps(by)) continue
      const cost = costOf(by)
      found.push({ by, cost })
      if (cost === 0) break
    }
  return found
}

const marredOf = (pattern: Pattern, angle: number): Marred => {
  const sawn = [
    pattern.cut,
    ...pattern.marks.flatMap((mark) => (mark.kind === 'stroke' && mark.layer === 'cut' ? [mark.path] : [])),
  ]
  const timbers = pattern.markPaths.slice(0, pattern.screws.length)
  return {
    screws: turnPoints(
      pattern.screws.flatMap(({ middles }) => middles),
      angle,
    ),
    cut: pointsAlong(sawn, angle),
    edges: pointsAlong(timbers, angle),
  }
}

/** Points of paths where they run along joint lines: of those along upright ones, of those along level ones; x and y by turns. */
const pointsAlong = (paths: readonly Path[], angle: number): readonly [number[], number[]] => {
  const found: [number[], number[]] = [[], []]
  for (const path of paths)
    for (const segment of pathSegments(path)) {
      // a straight line is looked at whole
      const ends = segment.kind === 'line' ? [segment.from, segment.to] : sampled(segment)
      const line = turnPoints(ends, angle)
      const count = segment.kind === 'line' ? Math.max(1, Math.ceil(segmentLength(segment) / spacing)) : 1
      for (let i = 2; i < line.length; i += 2) {
        const x = line[i - 2]!
        const y = line[i - 1]!
        const across = line[i]! - x
        const up = line[i + 1]! - y
        const isUpright = Math.abs(across) < steep * Math.abs(up)
        if (!isUpright && Math.abs(up) >= steep * Math.abs(across)) continue
        const points = found[isUpright ? 0 : 1]
        for (let k = 0; k < count; k++) {
          const t = (k + 0.5) / count
          points.push(x + t * across, y + t * up)
        }
      }
    }
  return found
}

const sampled = (segment: Segment): readonly Point[] => pathSample(segmentsPath([segment]), spacing)

/** Not reckoned to its end once it is as much as `most`. */
const marredCost = (
  marred: Marred,
  cells: HeldCells,
  pitch: Point,
  most = Number.POSITIVE_INFINITY,
): number => {
  const upright = linesCost(marred, cells, pitch, 0, 0, most)
  return upright >= most ? upright : upright + linesCost(marred, cells, pitch, 1, upright, most)
}

/** Of upright joint lines (0) or of level ones (1); not to its end once it is as much as `most` with what was found `before`. */
const linesCost = (
  { screws, cut, edges }: Marred,
  cells: HeldCells,
  pitch: Point,
  lines: 0 | 1,
  before = 0,
  most = Number.POSITIVE_INFINITY,
): number => {
  let sum = 0
  for (let i = 0; i < screws.length; i += 2) {
    const off = offLine(screws[i]!, screws[i + 1]!, cells, pitch, lines, ringClear.near)
    if (off >= ringClear.near) continue
    sum += off < ringClear.on ? cost.on : cost.near
    if (before + sum >= most) return sum
  }
  sum += cost.cut * countBeside(cut[lines], cells, pitch, lines, cutClear)
  if (before + sum >= most) return sum
  return sum + cost.edge * countBeside(edges[lines], cells, pitch, lines, edgeClear)
}

/** How many of some points lie so near to a joint line of two pages, but for a corner's. */
const countBeside = (
  points: readonly number[],
  cells: HeldCells,
  pitch: Point,
  lines: 0 | 1,
  clear: number,
): number => {
  let count = 0
  for (let i = 0; i < points.length; i += 2)
    if (offLine(points[i]!, points[i + 1]!, cells, pitch, lines, clear) < clear) count++
  return count > corner ? count : 0
}

/** How far a point lies from the nearest joint line of one direction, mm; no nearer than `most` counts, and none that is not between two pages. */
const offLine = (
  x: number,
  y: number,
  cells: HeldCells,
  pitch: Point,
  lines: 0 | 1,
  most: number,
): number => {
  // asked of thousands of points: nothing is made for one, and most lie farther off
  const { joint } = cells
  const at = lines === 0 ? (x - joint.x) / pitch.x : (y - joint.y) / pitch.y
  const line = Math.round(at)
  const off = Math.abs(at - line) * (lines === 0 ? pitch.x : pitch.y)
  if (off >= most) return most
  const along = Math.floor(lines === 0 ? (y - joint.y) / pitch.y : (x - joint.x) / pitch.x)
  const isBetween =
    lines === 0
      ? isHeld(cells, line - 1, along) && isHeld(cells, line, along)
      : isHeld(cells, along, line - 1) && isHeld(cells, along, line)
  return isBetween ? off : most
}

/** Whether the first page in the order of taping holds the toe: the leftmost one of the lowest row, or of the highest. */
const toeFirst = (toe: Point, { joint, columns, lengths }: HeldCells, pitch: Point): boolean => {
  const cell = Math.floor((toe.y - joint.y) / pitch.y) * columns + Math.floor((toe.x - joint.x) / pitch.x)
  const low = lengths.findIndex((length) => length > 0)
  const top = Math.floor(lengths.findLastIndex((length) => length > 0) / columns) * columns
  return cell === low || cell === top + lengths.slice(top).findIndex((length) => length > 0)
}
