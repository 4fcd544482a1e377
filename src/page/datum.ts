import type { Units } from '../design/design.ts'
import { cross } from '../drawing/cross.ts'
import { type Drawing, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { convexContains } from '../geometry/clip.ts'
import { pathPolygon, polygonContains } from '../geometry/contains.ts'
import { pathDistance } from '../geometry/nearest.ts'
import { type Point, pointDistance } from '../geometry/point.ts'
import { pathSample } from '../geometry/sample.ts'
import { showLength } from '../length.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { letters, pens } from '../pattern/pens.ts'
import { type Tile, tilePoint } from './tile.ts'

/** A cross whose distances from the panel's own edges are printed beside it. */
export interface Datum {
  /** number on the map */
  readonly number: number
  readonly tile: string
  readonly at: Point
}

/** Datums are set out on round figures, mm. */
const roundStep = (units: Units): number => (units === 'in' ? 12.7 : 10)

/** From the cut line and from what is trimmed or covered, mm. */
const clear = 14

/**
 * Up to `count` crosses on the wood, far apart, each on another page: the first nearest to the toe, each next one where its
 * nearest fellow is farthest.
 */
export const chooseDatums = (
  tiles: readonly Tile[],
  pattern: Pattern,
  units: Units,
  count: number,
): readonly Datum[] => {
  const step = roundStep(units)
  const wood = pathPolygon(pattern.outline, 2)
  const marks = [pattern.outline, ...pattern.markPaths].flatMap((path) => pathSample(path, 3))
  /** the figures stand at the right of the cross, below it, on what the page keeps and clear of every mark */
  const roomy = (tile: Tile, at: Point): boolean => {
    const { width, height } = datumSize({ at }, pattern, units)
    if (!convexContains(tile.cell, { x: at.x + width, y: at.y - height })) return false
    return !marks.some((p) => p.x > at.x - 8 && p.x < at.x + width && p.y > at.y - height && p.y < at.y + 8)
  }
  const candidates = tiles.flatMap((tile) => {
    const [xs, ys] = [tile.cell.map((p) => p.x), tile.cell.map((p) => p.y)]
    const found: { readonly tile: string; readonly at: Point }[] = []
    for (let x = Math.ceil(Math.min(...xs) / step); x * step <= Math.max(...xs); x++)
      for (let y = Math.ceil(Math.min(...ys) / step); y * step <= Math.max(...ys); y++) {
        const at = { x: x * step, y: y * step }
        if (
          convexContains(tile.cell, at, -clear) &&
          polygonContains(wood, at) &&
          pathDistance(pattern.outline, at) >= clear &&
          roomy(tile, at)
        )
          found.push({ tile: tile.name, at })
      }
    return found
  })
  const chosen: Datum[] = []
  while (chosen.length < count) {
    const left = candidates.filter((c) => chosen.every((d) => d.tile !== c.tile))
    const worth = (p: Point): number =>
      chosen.length === 0 ? -Math.hypot(p.x, p.y) : Math.min(...chosen.map((d) => pointDistance(d.at, p)))
    const best = left.reduce<(typeof left)[number] | undefined>(
      (a, b) => (a && worth(a.at) >= worth(b.at) ? a : b),
      undefined,
    )
    if (!best) break
    chosen.push({ ...best, number: chosen.length + 1 })
  }
  return chosen
}

/** The three figures of a datum, in the builder's units. */
export const datumFigures = (
  { at }: Pick<Datum, 'at'>,
  pattern: Pattern,
  units: Units,
): readonly string[] => [
  `${showLength(at.x, units)} from the front edge`,
  `${showLength(at.y, units)} from the bottom edge`,
  `${showLength(pattern.length - at.x, units)} from the back edge`,
]

/** Room that a datum takes beside its cross, mm. */
const datumSize = (datum: Pick<Datum, 'at'>, pattern: Pattern, units: Units) => ({
  width:
    9 +
    Math.max(...datumFigures(datum, pattern, units).map((line) => textWidth(line, letters.small, 'regular'))),
  height: 14,
})

/** Cross, number and figures; in the window as the drawing is read. */
export const datumMarks = (datum: Datum, tile: Tile, pattern: Pattern, units: Units): Drawing => {
  const p = tilePoint(tile, datum.at)
  return [
    ...cross('datum', p, 7, pens.cross),
    text('datum', { x: p.x + 1.5, y: p.y + 2 }, letters.word, `${datum.number}`, { face: 'bold' }),
    ...datumFigures(datum, pattern, units).map((line, i) =>
      text('datum', { x: p.x + 8, y: p.y - 3.5 - i * 4 }, letters.small, line),
    ),
  ]
}
