import type { Units } from '../../design/design.ts'
import { type Drawing, text } from '../../drawing/drawing.ts'
import { target } from '../../drawing/target.ts'
import type { Box } from '../../geometry/bounds.ts'
import { type Point, pointDistance } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { rowTurn, type Tile, tilePoint } from '../tile/tile.ts'
import { arm, datumFigures, figuresHeight } from './datum-figures.ts'
import { type DatumPage, type DatumPlace, datumPages } from './datum-places.ts'

/** A cross whose distances from the panel's own edges are printed beside it. */
export interface Datum extends DatumPlace {
  /** letter on the map: no other thing on paper has one of these */
  readonly letter: string
}

/** Rows have letters from A on; X is on the studs. */
const crossLetters = 'PQRSTUVW'

/** Crosses that a line must have to be laid to the panel. */
const leastCrosses = 3

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
  const pages = datumPages(tiles, pattern, units)
  const onWood = farApart(pages, count, (page, at) => page.onWood(at))
  const spreadOnWood = onWood.length >= leastCrosses ? spread(onWood) : 0
  // as a rule so far apart that those anywhere need not be found
  if (spreadOnWood > worthWood * widestSpread(pages)) return onWood
  const anywhere = farApart(pages, count, () => true)
  return onWood.length >= leastCrosses && spreadOnWood >= worthWood * spread(anywhere) ? onWood : anywhere
}

const farApart = (
  pages: readonly DatumPage[],
  count: number,
  isWanted: (page: DatumPage, at: Point) => boolean,
): readonly Datum[] => {
  const chosen: Datum[] = []
  while (chosen.length < count) {
    const others = pages.filter(({ tile }) => !chosen.some((datum) => datum.tile === tile))
    const other = farthest(others, chosen, isWanted)
    const best = other ?? farthest(pages, chosen, isWanted)
    if (!best || (!other && worthAt(best.at, chosen) < apart)) break
    chosen.push({ ...best, letter: crossLetters[chosen.length]! })
  }
  return chosen
}

/** How far a place lies from its nearest cross; at first, how near to the toe. */
const worthAt = (at: Point, chosen: readonly Datum[]): number => {
  if (chosen.length === 0) return -Math.hypot(at.x, at.y)
  let worth = Number.POSITIVE_INFINITY
  for (let i = 0; i < chosen.length; i++) {
    const other = chosen[i]!.at
    worth = Math.min(worth, Math.hypot(other.x - at.x, other.y - at.y))
  }
  return worth
}

/** Whether a place is sure to be worth less than so much: told by squares, with a hair to spare, as most places are. */
const isLess = (at: Point, chosen: readonly Datum[], most: number): boolean => {
  const square = most * most
  if (chosen.length === 0) return at.x * at.x + at.y * at.y > square * (1 + 1e-9)
  for (let i = 0; i < chosen.length; i++) {
    const dx = chosen[i]!.at.x - at.x
    const dy = chosen[i]!.at.y - at.y
    if (dx * dx + dy * dy < square * (1 - 1e-9)) return true
  }
  return false
}

/** No place in a box is worth more. */
const worthIn = ({ x0, y0, x1, y1 }: Box, chosen: readonly Datum[]): number => {
  if (chosen.length === 0) return -Math.hypot(Math.max(0, x0, -x1), Math.max(0, y0, -y1))
  let worth = Number.POSITIVE_INFINITY
  for (const { at } of chosen)
    worth = Math.min(worth, Math.hypot(Math.max(at.x - x0, x1 - at.x), Math.max(at.y - y0, y1 - at.y)))
  return worth
}

/** Places are looked at in steps of so many: from end to end each would be better than the one before. */
const stride = 37

/** The place that is worth most, the first of equals; pages and places that cannot win are not asked. */
const farthest = (
  pages: readonly DatumPage[],
  chosen: readonly Datum[],
  isWanted: (page: DatumPage, at: Point) => boolean,
): DatumPlace | null => {
  const bounds = pages.map((page) => worthIn(page.bounds, chosen))
  const order = pages.map((_, i) => i).sort((a, b) => bounds[b]! - bounds[a]!)
  let best: { readonly place: DatumPlace; readonly page: number; readonly candidate: number } | undefined
  let most = Number.NEGATIVE_INFINITY
  for (const i of order) {
    const page = pages[i]!
    if (bounds[i]! + 1e-6 < most) break
    const candidates = page.candidates()
    const count = candidates.length
    const by = count % stride === 0 ? 1 : stride
    for (let n = 0, k = 0; n < count; n++, k = (k + by) % count) {
      const at = candidates[k]!
      if (best && isLess(at, chosen, most)) continue
      const worth = worthAt(at, chosen)
      if (worth < most) continue
      if (worth === most && best && (i > best.page || (i === best.page && k > best.candidate))) continue
      if (!isWanted(page, at)) continue
      const place = page.placeOf(k)
      if (!place) continue
      best = { place, page: i, candidate: k }
      most = worth
    }
  }
  return best?.place ?? null
}

/** The longest distance between two of them, mm. */
const spread = (datums: readonly Datum[]): number =>
  Math.max(0, ...datums.flatMap((a) => datums.map((b) => pointDistance(a.at, b.at))))

/** No two places on any pages lie farther apart, mm. */
const widestSpread = (pages: readonly DatumPage[]): number => {
  let widest = 0
  for (const { bounds: a } of pages)
    for (const { bounds: b } of pages)
      widest = Math.max(widest, Math.hypot(b.x1 - a.x0, Math.max(b.y1 - a.y0, a.y1 - b.y0)))
  return widest
}

/** Of the disc in a cross that is set out, mm. */
const disc = 2

/**
 * A cross along the panel's edges, as it is set out, its letter and figures beside it; in the window as the drawing is read. Rows
 * of a ribbon are turned against the panel: the words keep off the arms however they lie.
 */
export const datumMarks = (datum: Datum, tile: Tile, units: Units): Drawing => {
  const p = tilePoint(tile, datum.at)
  const [across, up] = datum.words
  const first = up > 0 ? figuresHeight - letters.small : -3.5
  return [
    ...target('datum', p, arm - 3, disc, pens.cross, rowTurn(tile)),
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
