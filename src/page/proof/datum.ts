import type { Units } from '../../design/design.ts'
import { type Drawing, text } from '../../drawing/drawing.ts'
import { target } from '../../drawing/target.ts'
import { pointDistance } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Tile, tilePoint } from '../tile/tile.ts'
import { arm, datumFigures, figuresHeight } from './datum-figures.ts'
import { type DatumPlace, datumPlaces } from './datum-places.ts'

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
  const places = datumPlaces(tiles, pattern, units)
  const onWood = farApart(
    places.filter((place) => place.onWood),
    count,
  )
  const anywhere = farApart(places, count)
  return onWood.length >= leastCrosses && spread(onWood) >= worthWood * spread(anywhere) ? onWood : anywhere
}

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
    ...target('datum', p, arm - 3, disc, pens.cross, Math.atan2(tile.toWindow[1], tile.toWindow[0])),
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
