import type { Units } from '../../design/design.ts'
import { dimension } from '../../drafting/dimension/dimension.ts'
import { draftStyle, lineTypes } from '../../drafting/line-types.ts'
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
import { type Path, pathOf, polygonOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import type { Datum } from '../proof/datum.ts'
import { type Occupancy, occupancyOf, occupyBox, takenUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import type { Tile } from '../tile/tile.ts'
import { clear, costOf, named, never, numberMarks, rather } from './map-numbers.ts'

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
  /** length and height of the panel are drawn below and beside it */
  readonly dimensions?: boolean
}

/** A picture with its lower left corner at 0,0; names may stand a little above its height, mm. */
export interface MapPicture {
  readonly marks: Drawing
  readonly height: number
}

/** Half the length of a cross, mm. */
const arm = 2

/**
 * Outline, tiles with their numbers and snap lines, crosses, toe and lip: in the middle of `wide` mm. Words
 * keep off the outline and off each other.
 */
export const mapPicture = (
  wide: number,
  { pattern, tiles, datums }: MapPictureFacts,
  style: MapPictureStyle,
  units: Units,
): MapPicture => {
  const box = tiles.map((tile) => pointsBounds(tile.window)).reduce(boxUnion, pathBounds(pattern.outline))
  const scale = Math.min(style.width / (box.x1 - box.x0), style.height / (box.y1 - box.y0))
  const [width, height] = [(box.x1 - box.x0) * scale, (box.y1 - box.y0) * scale]
  // the picture's own frame: lower left corner of all that may carry words at 0,0
  const below = style.dimensions ? 3 * style.name : 0
  const room = { left: (wide - width) / 2, bottom: style.name + 2 + below, top: style.name + 2 }
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
      occupyPath(taken, line, affineIdentity, 0.2, never | named)
  occupyPath(taken, pattern.outline, map, 0.3, never)
  if (style.dimensions)
    for (const line of extensions(pattern, at, wide)) occupyPath(taken, line, affineIdentity, 0.2, never)
  const cells = tiles.map((tile) => polygonOf(tile.cell[0]!, ...tile.cell.slice(1)))
  for (const path of [...cells, ...tiles.map((tile) => pathOf(...tile.snap))])
    occupyPath(taken, path, map, 0.3, rather)
  const name = (p: Point, words: string, layer: 'note' | 'datum'): Drawing =>
    besidePoint(taken, p, words, style.name, layer)
  // a letter is no use far from its cross: these take their places first
  const names = [
    ...datums.flatMap((datum, i) => name(crosses[i]!, datum.letter, 'datum')),
    ...pattern.points.flatMap((named) => name(at(named.at), named.name, 'note')),
    ...rowsOf(tiles).flatMap(({ row, snap }) => name(at(snap[0]), row, 'note')),
  ]
  // cells lie side by side: no number can stand on another's
  const cost = costOf(taken)
  const numbers = numberMarks(tiles, at, cost, style.number)
  return {
    marks: [
      group(map, [
        ...cells.map((cell) => stroke('note', cell, pens.tick)),
        ...tiles.map((tile) => stroke('note', pathOf(...tile.snap), { ...pens.tick, dash: [1, 0.8] })),
        stroke('note', pattern.outline, { width: 0.6 }),
      ]),
      ...numbers,
      ...crosses.flatMap((p) => cross('datum', p, arm, pens.mark)),
      ...names,
      ...(style.dimensions ? panelDimensions(pattern, box, at, style.name, units) : []),
    ],
    height: room.bottom + height,
  }
}

/** Where dimensions run out from the panel: names keep off them. */
const extensions = ({ length, height }: Pattern, at: (p: Point) => Point, wide: number): readonly Path[] => {
  const [low, high, corner] = [at({ x: 0, y: 0 }), at({ x: length, y: height }), at({ x: length, y: 0 })]
  return [
    pathOf(low, { x: low.x, y: 0 }),
    pathOf(corner, { x: corner.x, y: 0 }),
    pathOf(corner, { x: wide, y: corner.y }),
    pathOf(high, { x: wide, y: high.y }),
  ]
}

/** Length and height of the panel, clear of the pages. */
const panelDimensions = (
  { length, height }: Pattern,
  box: Box,
  at: (p: Point) => Point,
  size: number,
  units: Units,
): Drawing => {
  const style = { ...draftStyle, size, lines: lineTypes(pens.tick.width) }
  const [low, high, corner] = [at({ x: 0, y: 0 }), at({ x: length, y: height }), at({ x: length, y: 0 })]
  const pages = { x: at({ x: box.x1, y: 0 }).x, y: at({ x: 0, y: box.y0 }).y }
  const across = dimension(
    {
      from: low,
      to: corner,
      angle: 0,
      through: { x: 0, y: Math.min(low.y, pages.y) - 2.6 * size },
      figure: showLength(length, units),
    },
    style,
  )
  const up = dimension(
    {
      from: corner,
      to: high,
      angle: Math.PI / 2,
      through: { x: Math.max(high.x, pages.x) + 2.2 * size, y: 0 },
      figure: showLength(height, units),
    },
    style,
  )
  return [...across, ...up]
}

/** The first tile of each row. */
const rowsOf = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter((tile, i) => tiles.findIndex(({ row }) => row === tile.row) === i)

/** Farther from its point than this a line leads to a name, mm. */
const near = 3.5

/**
 * A word beside a point, the nearest place where it lies on nothing, above and before it among equals. To one that must stand farther
 * off a line leads.
 */
const besidePoint = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  layer: 'note' | 'datum',
): Drawing => {
  const [width, height] = [textWidth(words, size, 'bold'), size]
  const boxAt = ({ x, y }: Point): Box => boxGrow({ x0: x, y0: y, x1: x + width, y1: y + height }, clear)
  const [most, top] = [taken.columns * taken.step, taken.rows * taken.step]
  const under = (box: Box, kinds: number): number => takenUnder(taken, boxCorners(box), kinds)
  const places = [1, 2, 3.5, 5, 7, 9.5].flatMap((away) =>
    [
      { x: p.x - away - width, y: p.y + away },
      { x: p.x + away, y: p.y + away },
      { x: p.x - away - width, y: p.y - away - height },
      { x: p.x + away, y: p.y - away - height },
      { x: p.x - away - width, y: p.y - height / 2 },
      { x: p.x + away, y: p.y - height / 2 },
      { x: p.x - width / 2, y: p.y + away },
      { x: p.x - width / 2, y: p.y - away - height },
    ]
      .filter(({ x, y }) => x >= 0 && x + width <= most && y >= 0 && y + height <= top)
      .map((at) => ({ at, away })),
  )
  const best = places
    .map(({ at, away }) => {
      const box = boxAt(at)
      const lined = under(box, rather)
      return { at, away, cost: 100 * under(box, never) + lined + away / 10 }
    })
    .reduce((kept, place) => (place.cost < kept.cost ? place : kept))
  const box = boxAt(best.at)
  occupyBox(taken, box, never | named)
  const end = { x: Math.min(Math.max(p.x, box.x0), box.x1), y: Math.min(Math.max(p.y, box.y0), box.y1) }
  const leads = best.away > near ? pathOf(p, end) : null
  if (leads) occupyPath(taken, leads, affineIdentity, 0.2, never)
  return [
    ...(leads ? [stroke(layer, leads, pens.tick)] : []),
    text(layer, best.at, size, words, { face: 'bold' }),
  ]
}
