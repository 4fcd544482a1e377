import type { Units } from '../../design/design.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxHolds, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { type Convex, convexContains } from '../../geometry/clip.ts'
import { polygonInside } from '../../geometry/contains.ts'
import { inch } from '../../geometry/inch.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { type Path, pathOf, pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { levelStyle } from '../../pattern/heights.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { type Bounded, bounded } from '../room/line-stretches.ts'
import { clearIn, type Occupancy, occupancyOf, occupyBox, occupyUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { keepOff, on } from '../room/word-room.ts'
import { type Tile, tilePoint } from '../tile/tile.ts'
import { jointMarks } from '../tile/tile-joints.ts'
import { labelWords } from '../timber/label-marks.ts'
import { arm, type Beside, besideBox, besides, figuresWidth, type Widths, widthsOf } from './datum-figures.ts'

/** Where a cross may stand. */
export interface DatumPlace {
  /** number of the tile that carries it */
  readonly tile: number
  readonly at: Point
  /** it stays on the sawn panel */
  readonly onWood: boolean
  /** where its figures stand, as the page is read */
  readonly words: Beside
}

/** Datums are set out on round figures, the rounder ones where a page has room for them, mm. */
const roundSteps = (units: Units): readonly number[] => (units === 'in' ? [inch, inch / 2] : [20, 10])

/** From the cut line and from what is trimmed or covered, mm. */
const clear = 14

/** Squares of what crosses keep off, mm. */
const square = 2

/** Where crosses may stand on one page, asked place by place: most of them cannot win. */
export interface DatumPage {
  /** number of its tile */
  readonly tile: number
  /** around all places where a cross may stand, in the pattern; turned over where there is none */
  readonly bounds: Box
  /** the round figures on it; finer ones where none of the rounder has room */
  readonly candidates: () => readonly Point[]
  readonly onWood: (at: Point) => boolean
  /** what a cross is there by its place among the candidates; null where it and its figures have no room */
  readonly placeOf: (candidate: number) => DatumPlace | null
}

/** Where a cross and its figures find room on the pages of a pattern, on round figures from the panel's edges. */
export const datumPages = (tiles: readonly Tile[], pattern: Pattern, units: Units): readonly DatumPage[] => {
  const known: Known = {
    // coarse: a cross keeps farther from the line than any chord strays
    wood: polygonInside(pathSample(pattern.outline, 20)),
    outline: pathSegments(pattern.outline).map(bounded),
    paths: [pattern.outline, ...pattern.markPaths].map((path) => ({ path, bounds: pathBounds(path) })),
    words: wordsOf(pattern).map((word) => {
      const corners = textCorners(word, affineIdentity)
      return { corners, bounds: pointsBounds(corners) }
    }),
    widths: widthsOf(pattern, units),
  }
  return tiles.map((tile) => pageOf(tile, pattern, known, units))
}

/** The same for all pages of a pattern. */
interface Known {
  readonly wood: (p: Point) => boolean
  readonly outline: readonly Bounded[]
  readonly paths: readonly { readonly path: Path; readonly bounds: Box }[]
  readonly words: readonly { readonly corners: readonly Point[]; readonly bounds: Box }[]
  readonly widths: Widths
}

/** What crosses and their figures keep off on one page, in the window as the drawing is read. */
const roomOf = (tile: Tile, pattern: Pattern, { paths, words }: Known): Occupancy => {
  const room = occupancyOf(tile.width, tile.height, square)
  const window = boxGrow(pointsBounds(tile.window), square)
  for (const { path, bounds } of paths)
    if (boxOverlaps(bounds, window)) occupyPath(room, path, tile.toWindow, 0, 1)
  for (const { corners, bounds } of words)
    if (boxOverlaps(bounds, window))
      occupyUnder(
        room,
        corners.map((p) => affineApply(tile.toWindow, p)),
        0,
        1,
      )
  keepOff(room, jointMarks(tile, []), on.never, affineIdentity, 0)
  // the line alone: its heads are smaller than a square
  occupyPath(room, pathOf(...tile.snap), tile.toWindow, 0, on.never)
  for (const { at } of pattern.points)
    occupyBox(room, boxGrow(pointsBounds([tilePoint(tile, at)]), pointRoom), 1)
  return room
}

const pageOf = (tile: Tile, pattern: Pattern, known: Known, units: Units): DatumPage => {
  // a hair more: whether a point keeps off the edges is told by the cell itself
  const bounds = boxGrow(pointsBounds(tile.cell), 1e-6 - clear)
  const once: { room?: Occupancy; candidates?: readonly Point[] } = {}
  const places = new Map<Point, DatumPlace | null>()
  const placeAt = (at: Point): DatumPlace | null => {
    let place = places.get(at)
    if (place === undefined) {
      once.room ??= roomOf(tile, pattern, known)
      const words = wordsBeside(at, tile, known, units, once.room)
      place = words ? { tile: tile.number, at, words, onWood: known.wood(at) } : null
      places.set(at, place)
    }
    return place
  }
  const found = (): readonly Point[] => {
    for (const step of roundSteps(units)) {
      const points = roundPoints(tile, bounds, pattern, step)
      if (points.some((at) => placeAt(at) !== null)) return points
    }
    return []
  }
  const candidates = (): readonly Point[] => {
    once.candidates ??= found()
    return once.candidates
  }
  return {
    tile: tile.number,
    bounds,
    candidates,
    onWood: known.wood,
    placeOf: (candidate) => placeAt(candidates()[candidate]!),
  }
}

/** Points on round figures well within what a page keeps. */
const roundPoints = (
  tile: Tile,
  bounds: Box,
  { length, height }: Pattern,
  step: number,
): readonly Point[] => {
  const [x0, x1] = [Math.max(step, bounds.x0), Math.min(length - step, bounds.x1)]
  const [y0, y1] = [Math.max(step, bounds.y0), Math.min(height - step, bounds.y1)]
  const points: Point[] = []
  for (let i = Math.ceil(x0 / step); i * step <= x1; i++) {
    const [low, high] = uprightIn(tile.cell, i * step)
    const top = Math.min(y1, high)
    for (let k = Math.ceil(Math.max(y0, low) / step); k * step <= top; k++) {
      const at = { x: i * step, y: k * step }
      if (convexContains(tile.cell, at, -clear)) points.push(at)
    }
  }
  return points
}

/** From where to where an upright line lies in a convex polygon, a hair more; turned rows fill little of their box. */
const uprightIn = (polygon: Convex, x: number): readonly [number, number] => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  let from = polygon[polygon.length - 1]!
  for (const to of polygon) {
    if (Math.min(from.x, to.x) <= x && Math.max(from.x, to.x) >= x) {
      const level = from.x === to.x
      const y = level ? from.y : from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y)
      low = Math.min(low, y, level ? to.y : y)
      high = Math.max(high, y, level ? to.y : y)
    }
    from = to
  }
  return [low - 1e-6, high + 1e-6]
}

/** On which side of a cross its figures stand clear, where it stands clear itself; they are set only where it depends on them. */
const wordsBeside = (
  at: Point,
  tile: Tile,
  { outline, widths }: Known,
  units: Units,
  room: Occupancy,
): Beside | undefined => {
  const cell = tile.kept
  const free = (box: Box): boolean => boxHolds(cell, box) && clearIn(room, box, 1)
  const p = tilePoint(tile, at)
  if (!free({ x0: p.x - arm, x1: p.x + arm, y0: p.y - arm, y1: p.y + arm })) return undefined
  const around = boxGrow({ x0: at.x, y0: at.y, x1: at.x, y1: at.y }, clear)
  if (
    outline.some(
      ({ segment, bounds }) => boxOverlaps(bounds, around) && segmentDistance(segment, at, clear) < clear,
    )
  )
    return undefined
  const isFree = ([across, up]: Beside, width: number): boolean => free(besideBox(p, across, up, width))
  const first = besides.find((side) => isFree(side, widths.least))
  if (!first || isFree(first, widths.most)) return first
  const width = figuresWidth(at, units)
  return besides.find((side) => isFree(side, width))
}

/** A pattern's own words, those of its timbers at the first of their places. */
const wordsOf = (pattern: Pattern): readonly TextMark[] =>
  [
    ...pattern.marks,
    ...pattern.levels.flatMap((level) => levelMark(level, levelStyle)),
    ...pattern.labels.map((label) => labelWords(label, label.places[0]!)),
  ].filter((mark) => mark.kind === 'text')
