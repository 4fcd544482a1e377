import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { radiansOf } from '../../geometry/degrees.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { pens } from '../../pattern/pens.ts'
import { clearUnder, type Occupancy, takenAt } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { isInCell, type Tile } from '../tile/tile.ts'
import { boxesAlong, isWithin, mayHold, placesOnWood, type TimberBox } from './timber-box.ts'

/** Half the length of the strokes of an X, the usual one first, and air round it, mm. */
const halves = [6, 5, 4, 3]
const air = 0.8

/** Where along a timber and across it an X is tried. */
const shares = [0.74, 0.26, 0.68, 0.32, 0.62, 0.38, 0.8, 0.2, 0.56, 0.44, 0.5, 0.86, 0.14, 0.92, 0.08]
const asides = [0, 0.24, -0.24]

/** What an X keeps off, and how far, mm: with air where there is room for it. */
const tries = [
  [on.never | on.cut | on.rather, 3],
  [on.never | on.cut | on.rather, 1.4],
  [on.never | on.cut | on.rather, 0],
  [on.never | on.cut, 0],
] as const

/** No stroke of an X lies nearer to the long way of its timber, radians: it would look like one of its edges. */
const leastTurn = radiansOf(24)

/**
 * The X of each timber, whole on it and in what the page keeps, off all that is read there, off other strokes if it can; none where the
 * page has no room for it. Its strokes lie like the diagonals of the section, as cut timber is drawn: however a timber is turned, no
 * X looks like a plus.
 */
export const timberSigns = (timbers: readonly TimberBox[], tile: Tile, room: Occupancy): readonly Drawing[] =>
  timbers.map((timber) => {
    const turn = Math.max(leastTurn, Math.atan2(timber.narrow, timber.long))
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    // most timbers lie on other pages too
    const places = placesOnWood(timber, shares, asides).filter((at) => isInCell(tile, [at], air))
    const corners = boxesAlong(timber.along)
    // asked once of each place and size
    const known: (boolean | undefined)[] = []
    const isWhole = (k: number, at: Point, half: number): boolean => {
      const found = known[k]
      if (found !== undefined) return found
      const own = corners(at, half * cos, half * sin)
      const is = isWithin(timber, own, air) && isInCell(tile, own, air)
      known[k] = is
      return is
    }
    for (const [kinds, around] of tries)
      for (let h = 0; h < halves.length; h++)
        for (let k = 0; k < places.length; k++) {
          const at = places[k]!
          const half = halves[h]!
          if (
            mayHold(at, half * cos + air, half * sin + air) &&
            !takenAt(room, at, kinds) &&
            isWhole(h * places.length + k, at, half) &&
            clearUnder(room, corners(at, half * cos + around, half * sin + around), kinds)
          )
            return strokes(at, timber.along, turn, half)
        }
    return []
  })

const strokes = (at: Point, along: number, turn: number, half: number): Drawing =>
  [along + turn, along - turn].map((angle) =>
    stroke('mark', pathOf(pointToward(at, angle, -half), pointToward(at, angle, half)), pens.mark),
  )
