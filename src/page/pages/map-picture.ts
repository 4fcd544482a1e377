import { cross } from '../../drawing/cross.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import {
  type Affine,
  affineApply,
  affineIdentity,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../geometry/affine.ts'
import { type Box, boxGrow, boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners } from '../../geometry/clip.ts'
import { pathOf, polygonOf } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import type { Datum } from '../proof/datum.ts'
import { boxCounter, type Occupancy, occupancyOf, occupyBox, takenUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import type { Tile } from '../tile/tile.ts'

export interface MapPictureFacts {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
}

export interface MapPictureStyle {
  /** of the picture at most; what stands beside it may reach a little farther, mm */
  readonly width: number
  readonly height: number
  /** height of a tile's number at most, and of names and the letters of crosses, mm */
  readonly number: number
  readonly name: number
}

/** A picture with its lower left corner at 0,0; names may stand a little above its height, mm. */
export interface MapPicture {
  readonly marks: Drawing
  readonly height: number
}

/** Half the length of a cross, mm. */
const arm = 2

/** The letters of an image are this much wider than a page's, which are the ones measured. */
const wider = 1.15

/** Room kept round words, mm. */
const clear = 0.6

/**
 * Outline, tiles with their numbers and snap lines, crosses, toe and lip: in the middle of `wide` mm. Words
 * keep off the outline and off each other; a page's number gives way to what must stand beside its point.
 */
export const mapPicture = (
  wide: number,
  { pattern, tiles, datums }: MapPictureFacts,
  style: MapPictureStyle,
): MapPicture => {
  const box = tiles.map((tile) => pointsBounds(tile.window)).reduce(boxUnion, pathBounds(pattern.outline))
  const scale = Math.min(style.width / (box.x1 - box.x0), style.height / (box.y1 - box.y0))
  const [width, height] = [(box.x1 - box.x0) * scale, (box.y1 - box.y0) * scale]
  // the picture's own frame: lower left corner of all that may carry words at 0,0
  const room = { left: (wide - width) / 2, bottom: style.name + 2, top: style.name + 2 }
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y0), affineScale(scale)),
    affineTranslate(room.left, room.bottom),
  )
  const at = (p: Point): Point => affineApply(map, p)
  const taken = occupancyOf(wide, room.bottom + height + room.top, 0.4)

  const crosses = datums.map((datum) => at(datum.at))
  for (const { x, y } of crosses)
    for (const line of [
      pathOf({ x: x - arm, y }, { x: x + arm, y }),
      pathOf({ x, y: y - arm }, { x, y: y + arm }),
    ])
      occupyPath(taken, line, affineIdentity, 0.2, never)
  occupyPath(taken, pattern.outline, map, 0.3, never)
  const cells = tiles.map((tile) => polygonOf(tile.cell[0]!, ...tile.cell.slice(1)))
  for (const path of [...cells, ...tiles.map((tile) => pathOf(...tile.snap))])
    occupyPath(taken, path, map, 0.3, rather)
  const name = (p: Point, words: string, layer: 'note' | 'datum') =>
    text(layer, besidePoint(taken, p, words, style.name), style.name, words, { face: 'bold' })
  const names = [
    ...pattern.points.map((named) => name(at(named.at), named.name, 'note')),
    ...datums.map((datum, i) => name(crosses[i]!, datum.letter, 'datum')),
    ...rowsOf(tiles).map(({ row, snap }) => name(at(snap[0]), row, 'note')),
  ]
  // cells lie side by side: no number can stand on another's
  const cost = costOf(taken)
  const numbers = tiles.map((tile) => numberMark(tile, tile.cell.map(at), cost, style.number))
  return {
    marks: [
      group(map, [
        ...cells.map((cell) => stroke('joint', cell, pens.tick)),
        ...tiles.map((tile) => stroke('joint', pathOf(...tile.snap), { ...pens.tick, dash: [1, 0.8] })),
      ]),
      ...numbers,
      group(map, [stroke('note', pattern.outline, { width: 0.6 })]),
      ...crosses.flatMap((p) => cross('datum', p, arm, pens.mark)),
      ...names,
    ],
    height: room.bottom + height,
  }
}

/** No number is smaller where the cell has room for this, mm: a phone is read at arm's length. */
const leastNumber = 1.8

/** What words never lie on where there is another place: the outline, crosses, other words; and what they rather keep off. */
const [never, rather] = [1, 2]

/** How much of what is taken a box covers. */
type Cost = (box: Box) => number

const costOf = (taken: Occupancy): Cost =>
  boxCounter(taken, (kinds) => 100 * (kinds & never) + (kinds & rather) / rather)

/** The first tile of each row. */
const rowsOf = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter((tile, i) => tiles.findIndex(({ row }) => row === tile.row) === i)

/** Places over a cell, its middle first. */
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82]

/** A tile's number in its cell, smaller where a large one would lie on something. */
const numberMark = (tile: Tile, cell: readonly Point[], cost: Cost, tallest: number) => {
  const [a, b, c, d] = cell as readonly [Point, Point, Point, Point]
  const words = `${tile.number}`
  const own = pointsBounds(cell)
  const slim = textWidth(words, 1, 'bold') * wider
  const largest = Math.min(tallest, (own.y1 - own.y0) * 0.5, ((own.x1 - own.x0) * 0.5) / slim)
  const boxAt = (p: Point, size: number, room: number): Box =>
    boxGrow(
      {
        x0: p.x - (slim * size) / 2,
        x1: p.x + (slim * size) / 2,
        y0: p.y - size / 2,
        y1: p.y + size / 2,
      },
      room,
    )
  const sizes = [1, 0.85, 0.7, 0.55, 0.45, 0.37].map((share) => Math.max(largest * share, leastNumber))
  const places = sizes.flatMap((size) =>
    shares.flatMap((u) =>
      shares.map((v) => ({
        middle: pointBetween(pointBetween(a, b, u), pointBetween(d, c, u), v),
        size: Math.min(size, largest),
      })),
    ),
  )
  const covered = ({ middle, size }: (typeof places)[number], room: number): number =>
    cost(boxAt(middle, size, room))
  const best =
    places.find((place) => covered(place, clear) === 0) ??
    // better tight than on a line
    places.find((place) => covered(place, 0) === 0) ??
    places.reduce((kept, place) => (covered(place, 0) < covered(kept, 0) ? place : kept))
  const { middle, size } = best
  return text('note', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })
}

/** Start of the baseline of a word beside a point, where it covers least; above and before it among equals. */
const besidePoint = (taken: Occupancy, p: Point, words: string, size: number): Point => {
  const [width, height] = [textWidth(words, size, 'bold') * wider, size * 0.75]
  const boxAt = ({ x, y }: Point): Box => boxGrow({ x0: x, y0: y, x1: x + width, y1: y + height }, clear)
  const [most, top] = [taken.columns * taken.step, taken.rows * taken.step]
  const cost = (box: Box): number =>
    100 * takenUnder(taken, boxCorners(box), never) + takenUnder(taken, boxCorners(box), rather)
  const places = [1, 2, 3.5, 5].flatMap((away) =>
    [
      { x: p.x - away - width, y: p.y + away },
      { x: p.x + away, y: p.y + away },
      { x: p.x - away - width, y: p.y - away - height },
      { x: p.x + away, y: p.y - away - height },
      { x: p.x - away - width, y: p.y - height / 2 },
      { x: p.x - width / 2, y: p.y + away },
      { x: p.x - width / 2, y: p.y - away - height },
    ].filter(({ x, y }) => x >= 0 && x + width <= most && y >= 0 && y + height <= top),
  )
  const best = places
    .map((at) => ({ at, covered: cost(boxAt(at)) }))
    .reduce((kept, place) => (place.covered < kept.covered ? place : kept))
  occupyBox(taken, boxAt(best.at), never)
  return best.at
}
