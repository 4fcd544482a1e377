import type { Units } from '../../design/design.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, text } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, pointsBounds, segmentBounds } from '../../geometry/bounds.ts'
import { boxCorners, convexContains } from '../../geometry/clip.ts'
import { polygonInside } from '../../geometry/contains.ts'
import { inch } from '../../geometry/inch.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointDistance } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { showLength } from '../../length.ts'
import { levelStyle } from '../../pattern/heights.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { clearIn, type Occupancy, occupancyOf, occupyUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { type Tile, tileCell, tilePoint } from '../tile/tile.ts'
import { jointMarks, snapMarks } from '../tile/tile-joints.ts'
import { labelWords } from '../timber/label-marks.ts'

/** A cross whose distances from the panel's own edges are printed beside it. */
export interface Datum {
  /** letter on the map: no other thing on paper has one of these */
  readonly letter: string
  /** number of the tile that carries it */
  readonly tile: number
  readonly at: Point
  /** it stays on the sawn panel */
  readonly onWood: boolean
  /** where its figures stand, as the page is read */
  readonly words: Beside
}

/** Side of a cross: to the right or left of it, below or above. */
type Beside = readonly [1 | -1, 1 | -1]

const besides: readonly Beside[] = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]

/** Rows have letters from A on; X is on the studs. */
const crossLetters = 'PQRSTUVW'

/** Crosses that a line must have to be laid to the panel. */
const leastCrosses = 3

/** Datums are set out on round figures, the rounder ones where a page has room for them, mm. */
const roundSteps = (units: Units): readonly number[] => (units === 'in' ? [inch, inch / 2] : [20, 10])

/** From the cut line and from what is trimmed or covered, mm. */
const clear = 14

/** Half the room of a cross, and the height of its figures, mm. */
const arm = 8
const figuresHeight = 14

/** Two crosses on one page: each keeps room for its figures, and they tell how the page is turned, mm. */
const apart = 120

/** Crosses on the wood may lie this much closer to each other than crosses anywhere on the panel. */
const worthWood = 0.75

/**
 * Up to `count` crosses far apart, each on another page as long as there are pages: the first nearest to the toe, each next one
 * where its nearest fellow is farthest. They lie on the wood; where that holds fewer than three, or holds them in one corner of
 * the line, on the uncut panel.
 */
export const chooseDatums = (
  tiles: readonly Tile[],
  pattern: Pattern,
  units: Units,
  count: number,
): readonly Datum[] => {
  const known = { wood: woodOf(pattern), outline: pathSegments(pattern.outline), words: wordsOf(pattern) }
  const places = tiles.flatMap((tile) => datumPlaces(tile, pattern, known, units))
  const onWood = farApart(
    places.filter((place) => place.onWood),
    count,
  )
  const anywhere = farApart(places, count)
  return onWood.length >= leastCrosses && spread(onWood) >= worthWood * spread(anywhere) ? onWood : anywhere
}

type DatumPlace = Omit<Datum, 'letter'>

const farApart = (places: readonly DatumPlace[], count: number): readonly Datum[] => {
  const chosen: Datum[] = []
  const used = new Set<number>()
  // how far each place lies from its nearest cross; at first, how near to the toe
  let far = places.map(({ at }) => -Math.hypot(at.x, at.y))
  while (chosen.length < count) {
    let other = -1
    let any = -1
    far.forEach((worth, i) => {
      if (any < 0 || worth > far[any]!) any = i
      if (!used.has(places[i]!.tile) && (other < 0 || worth > far[other]!)) other = i
    })
    const best = other < 0 ? any : other
    if (best < 0 || (other < 0 && far[any]! < apart)) break
    const place = places[best]!
    far = places.map(({ at }, i) => {
      const away = pointDistance(at, place.at)
      return chosen.length === 0 ? away : Math.min(far[i]!, away)
    })
    used.add(place.tile)
    chosen.push({ ...place, letter: crossLetters[chosen.length]! })
  }
  return chosen
}

/** The longest distance between two of them, mm. */
const spread = (datums: readonly Datum[]): number =>
  Math.max(0, ...datums.flatMap((a) => datums.map((b) => pointDistance(a.at, b.at))))

/** The wood in the pattern, coarse: a cross keeps farther from the line than any chord strays. */
const woodOf = (pattern: Pattern): ((p: Point) => boolean) => polygonInside(pathSample(pattern.outline, 20))

/** Squares of what crosses keep off, mm. */
const square = 2

/** What crosses and their figures keep off on one page, in the window as the drawing is read. */
const roomOf = (tile: Tile, pattern: Pattern, words: readonly TextMark[]): Occupancy => {
  const room = occupancyOf(tile.width, tile.height, square)
  for (const path of [pattern.outline, ...pattern.markPaths]) occupyPath(room, path, tile.toWindow, 0, 1)
  for (const word of words) occupyUnder(room, textCorners(word, tile.toWindow), 0, 1)
  for (const mark of [...jointMarks(tile, []), ...snapMarks(tile)])
    if (mark.kind === 'stroke') occupyPath(room, mark.path, affineIdentity, 0, 1)
    else if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), 0, 1)
  for (const { at } of pattern.points)
    occupyUnder(room, boxCorners(boxGrow(pointsBounds([tilePoint(tile, at)]), pointRoom)), 0, 1)
  return room
}

/** The same for all pages of a pattern. */
interface Known {
  readonly wood: (p: Point) => boolean
  readonly outline: readonly Segment[]
  readonly words: readonly TextMark[]
}

/** Where a cross and its figures find room on a page, on round figures from the panel's edges. */
const datumPlaces = (
  tile: Tile,
  pattern: Pattern,
  { wood, outline, words: own }: Known,
  units: Units,
): readonly DatumPlace[] => {
  const cell = tileCell(tile)
  const room = roomOf(tile, pattern, own)
  const free = (box: Box): boolean =>
    box.x0 >= cell.x0 && box.x1 <= cell.x1 && box.y0 >= cell.y0 && box.y1 <= cell.y1 && clearIn(room, box, 1)
  const [xs, ys] = [tile.cell.map((p) => p.x), tile.cell.map((p) => p.y)]
  const around = boxGrow(pointsBounds(tile.cell), clear)
  const near = outline.filter((segment) => boxOverlaps(segmentBounds(segment), around))
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
        // else none of its sides is
        if (!besides.some(([across, up]) => free(besideBox(p, across, up, arm)))) continue
        const width = figuresWidth(at, units)
        const words = besides.find(([across, up]) => free(besideBox(p, across, up, width)))
        if (words) found.push({ tile: tile.number, at, words, onWood: wood(at) })
      }
    if (found.length > 0) return found
  }
  return []
}

/** A cross at a point of the window, with its figures to one side of it. */
const besideBox = (p: Point, across: number, up: number, width: number): Box => ({
  x0: across > 0 ? p.x - arm : p.x - width,
  x1: across > 0 ? p.x + width : p.x + arm,
  y0: up > 0 ? p.y - arm : p.y - figuresHeight,
  y1: up > 0 ? p.y + figuresHeight : p.y + arm,
})

/** A pattern's own words, those of its timbers at the first of their places. */
const wordsOf = (pattern: Pattern): readonly TextMark[] =>
  [
    ...pattern.marks,
    ...pattern.levels.flatMap((level) => levelMark(level, levelStyle)),
    ...pattern.labels.map((label) => labelWords(label, label.places[0]!)),
  ].filter((mark) => mark.kind === 'text')

/**
 * The three figures of a datum, in the builder's units: from the two edges that he has before the first cut, and straight from
 * where they meet, which tells whether they are square.
 */
export const datumFigures = (at: Point, units: Units): readonly string[] => [
  `${showLength(at.x, units)} from the front edge`,
  `${showLength(at.y, units)} from the bottom edge`,
  `${showLength(Math.hypot(at.x, at.y), units)} from their corner`,
]

/** Room from the middle of the cross to the end of its figures, mm. */
const figuresWidth = (at: Point, units: Units): number =>
  arm + Math.max(...datumFigures(at, units).map((line) => textWidth(line, letters.small, 'regular')))

/**
 * A cross along the panel's edges, as it is set out, its letter and figures beside it; in the window as the drawing is read. Rows
 * of a ribbon are turned against the panel: the words keep off the arms however they lie.
 */
export const datumMarks = (datum: Datum, tile: Tile, units: Units): Drawing => {
  const p = tilePoint(tile, datum.at)
  const [across, up] = datum.words
  const first = up > 0 ? figuresHeight - letters.small : -3.5
  return [
    ...cross('datum', p, arm - 1, pens.cross, Math.atan2(tile.toWindow[1], tile.toWindow[0])),
    text(
      'datum',
      { x: p.x + arm * across, y: p.y - up * 2 - (up > 0 ? letters.word : 0) },
      letters.word,
      `cross ${datum.letter}`,
      {
        face: 'bold',
        align: across > 0 ? 'left' : 'right',
      },
    ),
    ...datumFigures(datum.at, units).map((line, i) =>
      text('datum', { x: p.x + across * arm, y: p.y + first - i * 4 }, letters.small, line, {
        align: across > 0 ? 'left' : 'right',
      }),
    ),
  ]
}
