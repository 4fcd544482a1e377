import { text } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineAngle, affineIdentity } from '../../geometry/affine.ts'
import { boxGrow } from '../../geometry/bounds.ts'
import { convexContains } from '../../geometry/clip.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters } from '../../pattern/pens.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { clearUnder, type Occupancy, occupyBox } from '../room/occupancy.ts'
import { keepOff, on } from '../room/word-room.ts'
import { isInCell, type Tile, tilePoint } from './tile.ts'

/** How far off its ring a name may stand, mm; and its heights. */
const offs = [3.5, 5, 7, 9.5, 12.5, 16]
const sizes = [letters.word, 3.2, letters.small]

/** Directions from the point, seen as the drawing lies: up to the left first, where no wood is. */
const directions = [3, 5, 1, 7, 4, 0, 2, 6].map((eighth) => (eighth * Math.PI) / 4)

/**
 * The names of the points that this page keeps, beside their rings, off the other strokes as far as there is
 * room; each is kept off from then on with the air round its ring. In the window as the drawing is read.
 */
export const pointNames = ({ points }: Pattern, tile: Tile, room: Occupancy): readonly TextMark[] =>
  points.flatMap(({ name, at }) => {
    if (!convexContains(tile.cell, at, 0)) return []
    const p = tilePoint(tile, at)
    const turn = affineAngle(tile.toWindow, 0)
    const clearOf = (kinds: number): TextMark | undefined => {
      // large letters a little farther off before small ones
      for (const size of sizes)
        for (const off of offs)
          for (const direction of directions) {
            const word = nameAt(name, p, turn + direction, off, size, turn)
            const corners = textCorners(word, affineIdentity)
            if (isInCell(tile, corners, 0) && clearUnder(room, corners, kinds)) return word
          }
      return undefined
    }
    const found = clearOf(on.never | on.cut | on.rather) ?? clearOf(on.never)
    if (found) keepOff(room, [found], on.never)
    // words keep off the ring and the air round it
    occupyBox(room, boxGrow({ x0: p.x, y0: p.y, x1: p.x, y1: p.y }, pointRoom), on.never)
    return found ? [found] : []
  })

/** So that the nearest point of its box lies `off` from the point. */
const nameAt = (
  name: string,
  at: Point,
  direction: number,
  off: number,
  size: number,
  turn: number,
): TextMark => {
  const half = textWidth(name, size, 'bold') / 2
  const [along, up] = [Math.cos(direction - turn), Math.sin(direction - turn)]
  const middle = pointToward(pointToward(at, direction, off), turn, Math.sign(Math.round(along * 4)) * half)
  const low = pointToward(middle, turn + Math.PI / 2, (Math.sign(Math.round(up * 4)) * size) / 2 - size / 2)
  return text('mark', low, size, name, { face: 'bold', align: 'middle', angle: turn })
}
