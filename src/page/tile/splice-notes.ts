import { readableAngle } from '../../drafting/dimension/figure.ts'
import { text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { pathClip } from '../../geometry/clip.ts'
import { pathOf } from '../../geometry/path.ts'
import { pointAngle, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters } from '../../pattern/pens.ts'
import type { Occupancy } from '../room/occupancy.ts'
import { keepOff, on, wordClear } from '../room/word-room.ts'
import { isInCell, type Tile, tilePoint } from './tile.ts'

/** Both pieces come from the panel with this line whole: what the blade takes lies outside of each. */
const tries = ['JOINT: saw outside the line of each piece', 'JOINT: saw outside the line', 'JOINT: saw']

/** Where along what a page shows of a joint its words are tried, how far off it, and their heights, mm. */
const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88]
const offs = [2, 3]
const sizes = [letters.word, 3.2, letters.small]

/** What to do at a joint of pieces, along it on each page that shows some of it, on the side towards the toe if it can. */
export const spliceNotes = ({ joints }: Pattern, tile: Tile, room: Occupancy): readonly TextMark[] =>
  joints.flatMap(([top, foot]) => {
    const shown = pathClip(pathOf(foot, top), tile.cell)[0]
    if (!shown) return []
    const [a, b] = [tilePoint(tile, shown.start), tilePoint(tile, shown.pieces[0]!.to)]
    if (pointDistance(a, b) < leastShown) return []
    const along = pointAngle(a, b)
    const angle = readableAngle(along)
    const placesOf = (words: string, size: number) =>
      offs.flatMap((off) =>
        [1, -1].flatMap((side) =>
          shares.map((share) => {
            const near = pointToward(pointBetween(a, b, share), along + (side * Math.PI) / 2, off)
            // the box lies beyond its baseline or before it, as the words are read
            const above = Math.cos(angle - along) > 0 === side > 0
            const at = above ? near : pointToward(near, angle - Math.PI / 2, size)
            return text('mark', at, size, words, { angle, align: 'middle', face: 'bold' })
          }),
        ),
      )
    const firstOff = (kinds: number): TextMark | undefined => {
      for (const words of tries)
        for (const size of sizes)
          for (const word of placesOf(words, size))
            if (isInCell(tile, textCorners(word, affineIdentity), 1) && wordClear(room, word, kinds))
              return word
      return undefined
    }
    const found = firstOff(on.never | on.cut | on.rather) ?? firstOff(on.never | on.cut)
    if (!found) return []
    keepOff(room, [found], on.never)
    return [found]
  })

/** Less of a joint needs no words, mm. */
const leastShown = 20
