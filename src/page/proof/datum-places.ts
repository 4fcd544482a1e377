import type { Units } from '../../design/design.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { convexContains } from '../../geometry/clip.ts'
import { polygonInside } from '../../geometry/contains.ts'
import { inch } from '../../geometry/inch.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { levelStyle } from '../../pattern/heights.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { type Bounded, bounded } from '../room/line-stretches.ts'
import { type BoxCount, boxCounter, occupancyOf, occupyBox, occupyUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { type Tile, tileCell, tilePoint } from '../tile/tile.ts'
import { jointMarks, snapMarks } from '../tile/tile-joints.ts'
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

/** Where a cross and its figures find room on the pages of a pattern, on round figures from the panel's edges. */
export const datumPlaces = (
  tiles: readonly Tile[],
  pattern: Pattern,
  units: Units,
): readonly DatumPlace[] => {
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
  return tiles.flatMap((tile) => placesOn(tile, pattern, known, units))
}

/** The same for all pages of a pattern. */
interface Known {
  readonly wood: (p: Point) => boolean
  readonly outline: readonly Bounded[]
  readonly paths: readonly { readonly path: Path; readonly bounds: Box }[]
  readonly words: readonly { readonly corners: readonly Point[]; readonly bounds: Box }[]
  readonly widths: Widths
}

/** How many squares of a box carry what crosses and their figures keep off on one page, in the window as the drawing is read. */
const roomOf = (tile: Tile, pattern: Pattern, { paths, words }: Known): BoxCount => {
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
  for (const mark of [...jointMarks(tile, []), ...snapMarks(tile)])
    if (mark.kind === 'stroke') occupyPath(room, mark.path, affineIdentity, 0, 1)
    else if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), 0, 1)
  for (const { at } of pattern.points)
    occupyBox(room, boxGrow(pointsBounds([tilePoint(tile, at)]), pointRoom), 1)
  return boxCounter(room, (kinds) => kinds)
}

const placesOn = (tile: Tile, pattern: Pattern, known: Known, units: Units): readonly DatumPlace[] => {
  const { wood, outline, widths } = known
  const cell = tileCell(tile)
  const taken = roomOf(tile, pattern, known)
  const free = (box: Box): boolean =>
    box.x0 >= cell.x0 && box.x1 <= cell.x1 && box.y0 >= cell.y0 && box.y1 <= cell.y1 && taken(box) === 0
  /** the first of its sides where the figures of a cross stand clear; they are set only where it depends on them */
  const besideAt = (at: Point, p: Point): Beside | undefined => {
    const isFree = ([across, up]: Beside, width: number): boolean => free(besideBox(p, across, up, width))
    const first = besides.find((side) => isFree(side, widths.least))
    if (!first || isFree(first, widths.most)) return first
    const width = figuresWidth(at, units)
    return besides.find((side) => isFree(side, width))
  }
  const [xs, ys] = [tile.cell.map((p) => p.x), tile.cell.map((p) => p.y)]
  const around = boxGrow(pointsBounds(tile.cell), clear)
  const near = outline.filter(({ bounds }) => boxOverlaps(bounds, around)).map(({ segment }) => segment)
  for (const step of roundSteps(units)) {
    const found: DatumPlace[] = []
    const [x0, x1] = [Math.max(step, Math.min(...xs)), Math.min(pattern.length - step, Math.max(...xs))]
    const [y0, y1] = [Math.max(step, Math.min(...ys)), Math.min(pattern.height - step, Math.max(...ys))]
    for (let i = Math.ceil(x0 / step); i * step <= x1; i++)
      for (let k = Math.ceil(y0 / step); k * step <= y1; k++) {
        const at = { x: i * step, y: k * step }
        if (!convexContains(tile.cell, at, -clear)) continue
        const p = tilePoint(tile, at)
        if (!free({ x0: p.x - arm, x1: p.x + arm, y0: p.y - arm, y1: p.y + arm })) continue
        if (near.some((segment) => segmentDistance(segment, at) < clear)) continue
        const words = besideAt(at, p)
        if (words) found.push({ tile: tile.number, at, words, onWood: wood(at) })
      }
    if (found.length > 0) return found
  }
  return []
}

/** A pattern's own words, those of its timbers at the first of their places. */
const wordsOf = (pattern: Pattern): readonly TextMark[] =>
  [
    ...pattern.marks,
    ...pattern.levels.flatMap((level) => levelMark(level, levelStyle)),
    ...pattern.labels.map((label) => labelWords(label, label.places[0]!)),
  ].filter((mark) => mark.kind === 'text')
