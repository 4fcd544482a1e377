import { cross } from '../../drawing/cross.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf, polygonOf } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import type { Datum } from '../proof/datum.ts'
import { type Occupancy, occupancyOf, occupyBox, occupyPoints, takenIn } from '../room/occupancy.ts'
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
  /** height of a tile's number at most, and of names and the numbers of crosses, mm */
  readonly number: number
  readonly name: number
}

/** Half the length of a cross, mm. */
const arm = 2

/** The letters of an image are this much wider than a page's, which are the ones measured. */
const wider = 1.15

/** Room kept round words, mm. */
const clear = 0.6

/**
 * Outline, tiles with their numbers and snap lines, crosses, toe and lip: below `topLeft` and in the middle of `wide` mm. Words
 * keep off the outline and off each other; a page's number gives way to what must stand beside its point.
 */
export const mapPicture = (
  topLeft: Point,
  wide: number,
  { pattern, tiles, datums }: MapPictureFacts,
  style: MapPictureStyle,
): { readonly marks: Drawing; readonly bottom: number } => {
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
  const empty = (): Occupancy => occupancyOf(wide, room.bottom + height + room.top, 0.4)
  const taken: Taken = { never: empty(), rather: empty() }
  const keepOff = (map: Occupancy, path: Path): void =>
    occupyPoints(map, pathSample(path, 0.3 / scale).map(at), 0.3)

  const crosses = datums.map((datum) => at(datum.at))
  for (const p of crosses)
    occupyPoints(
      taken.never,
      [-1, -0.5, 0, 0.5, 1].flatMap((share) => [
        { x: p.x + share * arm, y: p.y },
        { x: p.x, y: p.y + share * arm },
      ]),
      0.2,
    )
  keepOff(taken.never, pattern.outline)
  const cells = tiles.map((tile) => polygonOf(tile.cell[0]!, ...tile.cell.slice(1)))
  for (const path of [...cells, ...tiles.map((tile) => pathOf(...tile.snap))]) keepOff(taken.rather, path)
  const name = (p: Point, words: string, layer: 'note' | 'datum') =>
    text(layer, besidePoint(taken, p, words, style.name), style.name, words, { face: 'bold' })
  const names = [
    ...pattern.points.map((named) => name(at(named.at), named.name, 'note')),
    ...datums.map((datum, i) => name(crosses[i]!, `${datum.number}`, 'datum')),
    ...rowsOf(tiles).map(({ row, snap }) => name(at(snap[0]), row, 'note')),
  ]
  const numbers = tiles.map((tile) => numberMark(tile, tile.cell.map(at), taken, style.number))
  return {
    marks: [
      group(affineTranslate(topLeft.x, topLeft.y - room.bottom - height), [
        group(map, [
          ...cells.map((cell) => stroke('joint', cell, pens.tick)),
          ...tiles.map((tile) => stroke('joint', pathOf(...tile.snap), { ...pens.tick, dash: [1, 0.8] })),
        ]),
        ...numbers,
        group(map, [stroke('note', pattern.outline, { width: 0.6 })]),
        ...crosses.flatMap((p) => cross('datum', p, arm, pens.mark)),
        ...names,
      ]),
    ],
    bottom: topLeft.y - height - room.bottom,
  }
}

/** No number is smaller where the cell has room for this, mm: a phone is read at arm's length. */
const leastNumber = 1.8

/** What words never lie on where there is another place: the outline, crosses, other words; and what they rather keep off. */
interface Taken {
  readonly never: Occupancy
  readonly rather: Occupancy
}

const cost = ({ never, rather }: Taken, box: Box): number => 100 * takenIn(never, box) + takenIn(rather, box)

/** The first tile of each row. */
const rowsOf = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter((tile, i) => tiles.findIndex(({ row }) => row === tile.row) === i)

/** Places over a cell, its middle first. */
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82]

/** A tile's number in its cell, smaller where a large one would lie on something. */
const numberMark = (tile: Tile, cell: readonly Point[], taken: Taken, tallest: number) => {
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
    cost(taken, boxAt(middle, size, room))
  const best =
    places.find((place) => covered(place, clear) === 0) ??
    // better tight than on a line
    places.find((place) => covered(place, 0) === 0) ??
    places.reduce((kept, place) => (covered(place, 0) < covered(kept, 0) ? place : kept))
  const { middle, size } = best
  occupyBox(taken.never, boxAt(middle, size, clear))
  return text('note', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })
}

/** Start of the baseline of a word beside a point, where it covers least; above and before it among equals. */
const besidePoint = (taken: Taken, p: Point, words: string, size: number): Point => {
  const [width, height] = [textWidth(words, size, 'bold') * wider, size * 0.75]
  const boxAt = ({ x, y }: Point): Box => boxGrow({ x0: x, y0: y, x1: x + width, y1: y + height }, clear)
  const [most, top] = [taken.never.columns * taken.never.step, taken.never.rows * taken.never.step]
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
    .map((at) => ({ at, covered: cost(taken, boxAt(at)) }))
    .reduce((kept, place) => (place.covered < kept.covered ? place : kept))
  occupyBox(taken.never, boxAt(best.at))
  return best.at
}
