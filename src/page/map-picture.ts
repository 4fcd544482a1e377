import { cross } from '../drawing/cross.ts'
import { type Drawing, group, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../geometry/affine.ts'
import { boxUnion, pathBounds, pointsBounds } from '../geometry/bounds.ts'
import { pathDistance } from '../geometry/nearest.ts'
import { type Path, polygonOf } from '../geometry/path.ts'
import { type Point, pointBetween, pointDistance } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { letters, pens } from '../pattern/pens.ts'
import type { Datum } from './datum.ts'
import { type Occupancy, occupancyOf, occupyBox, occupyPoints, takenIn } from './occupancy.ts'
import type { Tile } from './tile.ts'

export interface MapPictureFacts {
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
}

/** Height of the picture at most, mm. */
const most = 78

/** Outline, tiles with their numbers, crosses, toe and lip, below `topLeft` and centred in `width` mm. */
export const mapPicture = (
  topLeft: Point,
  width: number,
  { pattern, tiles, datums }: MapPictureFacts,
): { readonly marks: Drawing; readonly bottom: number } => {
  // a cross and its number on the picture's edge still lie on the page
  const box = tiles.map((tile) => pointsBounds(tile.window)).reduce(boxUnion, pathBounds(pattern.outline))
  const scale = Math.min((width - 10) / (box.x1 - box.x0), most / (box.y1 - box.y0))
  const map: Affine = affineThen(
    affineThen(affineTranslate(-box.x0, -box.y1), affineScale(scale)),
    affineTranslate(topLeft.x + (width - (box.x1 - box.x0) * scale) / 2, topLeft.y),
  )
  const bottom = topLeft.y - (box.y1 - box.y0) * scale - 5
  const cells = tiles.map((tile) => polygonOf(tile.cell[0]!, ...tile.cell.slice(1)))
  const labels = labelsOn(occupancyOf(width, topLeft.y, 0.5))
  for (const path of [pattern.outline, ...cells]) labels.keepOff(path, map)
  const numbers = tiles.map((tile) => {
    const at = affineApply(map, clearOf(tile, pattern, datums))
    const cell = pointsBounds(tile.cell.map((p) => affineApply(map, p)))
    const words = String(tile.number)
    const size = Math.min(
      6,
      (cell.y1 - cell.y0) * 0.5,
      ((cell.x1 - cell.x0) * 0.5) / textWidth(words, 1, 'bold'),
    )
    const half = (textWidth(words, 1, 'bold') * size) / 2
    labels.take({ x0: at.x - half, x1: at.x + half, y0: at.y - size / 2, y1: at.y + size / 2 })
    return text('note', { x: at.x, y: at.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })
  })
  const places = datums.map((datum) => affineApply(map, datum.at))
  for (const p of places) labels.take({ x0: p.x - 2, x1: p.x + 2, y0: p.y - 0.3, y1: p.y + 0.3 })
  for (const p of places) labels.take({ x0: p.x - 0.3, x1: p.x + 0.3, y0: p.y - 2, y1: p.y + 2 })
  return {
    marks: [
      group(
        map,
        cells.map((cell) => stroke('joint', cell, pens.tick)),
      ),
      ...numbers,
      group(map, [stroke('note', pattern.outline, { width: 0.6 })]),
      ...places.flatMap((p) => cross('datum', p, 2, pens.mark)),
      ...datums.map((datum, i) =>
        text('datum', labels.beside(places[i]!, `${datum.number}`), letters.small, `${datum.number}`, {
          face: 'bold',
        }),
      ),
      ...pattern.points.map(({ name, at }) =>
        text('note', labels.beside(affineApply(map, at), name), letters.small, name, { face: 'bold' }),
      ),
    ],
    bottom,
  }
}

/** Places for small words beside points, off everything that was taken before. */
const labelsOn = (map: Occupancy) => ({
  take: (box: Parameters<typeof occupyBox>[1]): void => occupyBox(map, box),
  keepOff: (path: Path, to: Affine): void => {
    const scale = Math.hypot(to[0], to[1])
    occupyPoints(
      map,
      pathSample(path, 0.4 / scale).map((p) => affineApply(to, p)),
      0.3,
    )
  },
  /** start of the baseline where a word covers least; above and before the point among equals */
  beside: (p: Point, words: string): Point => {
    const [width, height] = [textWidth(words, letters.small, 'bold'), letters.small * 0.75]
    const places = [1, 2, 3.5, 5].flatMap((away) =>
      [
        { x: p.x - away - width, y: p.y + away },
        { x: p.x + away, y: p.y + away },
        { x: p.x - away - width, y: p.y - away - height },
        { x: p.x + away, y: p.y - away - height },
        { x: p.x - width / 2, y: p.y + away },
        { x: p.x - width / 2, y: p.y - away - height },
      ].filter(({ x, y }) => x >= 0 && x + width <= map.columns * map.step && y >= 0),
    )
    const box = ({ x, y }: Point) => ({ x0: x - 0.6, y0: y - 0.6, x1: x + width + 0.6, y1: y + height + 0.6 })
    const best = places
      .map((at) => ({ at, covered: takenIn(map, box(at)) }))
      .reduce((kept, place) => (place.covered < kept.covered ? place : kept))
    occupyBox(map, box(best.at))
    return best.at
  },
})

/** Where a tile's number stands clear of the cut line and the crosses: its middle, else a place beside it. */
const clearOf = (tile: Tile, pattern: Pattern, datums: readonly Datum[]): Point => {
  const [a, b, c] = [tile.cell[0]!, tile.cell[1]!, tile.cell[3]!]
  const place = (u: number, v: number): Point =>
    pointBetween(pointBetween(a, b, u), { x: c.x + (b.x - a.x) * u, y: c.y + (b.y - a.y) * u }, v)
  const places = [
    [0.5, 0.5],
    [0.5, 0.3],
    [0.5, 0.7],
    [0.28, 0.3],
    [0.72, 0.3],
    [0.28, 0.7],
    [0.72, 0.7],
  ].map(([u, v]) => place(u!, v!))
  const across = pointDistance(a, c)
  const enough = across * 0.3
  const clear = (p: Point): number =>
    Math.min(
      enough,
      pathDistance(pattern.outline, p),
      ...datums.map(({ at }) => pointDistance(at, p)),
      // the names of toe and lip stand before their points
      ...pattern.points.flatMap(({ at }) =>
        [0, 0.12, 0.24].map((share) => pointDistance({ x: at.x - share * across, y: at.y }, p)),
      ),
    )
  return (
    places.find((p) => clear(p) >= enough) ??
    places.map((at) => ({ at, room: clear(at) })).reduce((kept, p) => (p.room > kept.room + 1e-6 ? p : kept))
      .at
  )
}
