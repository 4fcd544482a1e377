import { readableAngle } from '../../drafting/dimension/figure.ts'
import { text } from '../../drawing/drawing.ts'
import { cornersAt, type TextMark, textCorners } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { pathClip } from '../../geometry/clip.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import { convexMeet } from '../../geometry/polygon/convex-meet.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters } from '../../pattern/pens.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { grownWord, keepOff, on } from '../room/word-room.ts'
import { isInCell, type Tile, tilePoint } from './tile.ts'
import { bandReach } from './waste-band.ts'

/** Where along what a page shows of an edge its name is tried, and how far off it, mm. */
const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9]
const offs = [1.4, 2.4, bandReach + 1, bandReach + 2.2, bandReach + 3.4]

/** Words that run the same way, nearer than this, would be read as one with the name: "drill 8 mm first floor". mm */
const apart = 8

/**
 * The names of the edges that this page shows, along them, off all that lies there and well away from what is `said` of the notch; one
 * without room is left out.
 */
export const edgeNames = (
  pattern: Pattern,
  tile: Tile,
  room: Occupancy,
  said: readonly TextMark[],
): readonly TextMark[] =>
  pattern.edgeNames.flatMap(({ words, from, to }) => {
    const shown = pathClip(pathOf(from, to), tile.cell)[0]
    if (!shown) return []
    const [a, b] = [tilePoint(tile, shown.start), tilePoint(tile, shown.pieces[0]!.to)]
    const wide = textWidth(words, letters.small, 'regular')
    if (pointDistance(a, b) < Math.min(wide, leastShown)) return []
    const isFree = (corners: readonly Point[], word: () => TextMark): boolean =>
      isInCell(tile, corners, 0) &&
      clearUnder(room, corners, on.never | on.cut | on.rather) &&
      !said.some((other) => readAsOne(word(), other))
    const found = firstName(words, a, b, isFree)
    if (!found) return []
    keepOff(room, [found], on.never)
    return [found]
  })

/** The first place along an edge that is free, on its right before its left; only what stands there is set. Never upside down. */
const firstName = (
  words: string,
  a: Point,
  b: Point,
  isFree: (corners: readonly Point[], word: () => TextMark) => boolean,
): TextMark | undefined => {
  const along = pointAngle(a, b)
  const angle = readableAngle(along)
  const ahead = Math.cos(angle - along) > 0
  const set = (at: Point): TextMark => text('datum', at, letters.small, words, { angle, align: 'middle' })
  const cornersOf = cornersAt(set(a))
  for (const side of [-1, 1])
    for (const off of offs)
      for (const share of shares) {
        // the box lies beyond its baseline or before it, as the words are read
        const near = pointToward(pointBetween(a, b, share), along + Math.PI / 2, side * off)
        const at = ahead === side > 0 ? near : pointToward(near, angle - Math.PI / 2, letters.small)
        if (isFree(cornersOf(at), () => set(at))) return set(at)
      }
  return undefined
}

const readAsOne = (word: TextMark, other: TextMark): boolean =>
  Math.abs(Math.sin(word.angle - other.angle)) < 0.1 &&
  convexMeet(grownWord(word, apart), textCorners(other, affineIdentity)).length > 0

/** Less of an edge that is longer than its name needs none, mm. */
const leastShown = 40
