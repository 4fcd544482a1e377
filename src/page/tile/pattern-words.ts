import type { Drawing } from '../../drawing/drawing.ts'
import { cornersAt, type TextMark } from '../../drawing/text-box.ts'
import { affineAngle, affineApply } from '../../geometry/affine.ts'
import { pointMoved, unitVector } from '../../geometry/point.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { grownWord, keepOff, on } from '../room/word-room.ts'
import { clipMarks } from './clip-marks.ts'
import { isInCell, type Tile } from './tile.ts'

/** How far words are moved along their line, and up from it, in steps of 2 mm. */
const most = { along: 16, square: 6 }

/** Round words where there is room for it, mm. */
const air = 1.2

/**
 * The words among a pattern's marks, in the window as the drawing is read: where they stand, else moved along their line or up the least
 * that takes them off what words never lie on, to which each is added, and the cut line, off other strokes and with some air as far as there
 * is room; one without room is left out.
 */
export const patternWords = (marks: Drawing, tile: Tile, room: Occupancy): readonly TextMark[] =>
  clipMarks(
    marks.filter(({ kind }) => kind === 'text'),
    tile,
  ).flatMap((mark) => {
    if (mark.kind !== 'text') return []
    const word: TextMark = {
      ...mark,
      at: affineApply(tile.toWindow, mark.at),
      angle: affineAngle(tile.toWindow, mark.angle),
    }
    const cornersOf = cornersAt(word)
    const along = unitVector(word.angle)
    const up = unitVector(word.angle + Math.PI / 2)
    const firstOff = (kinds: number, around: number): TextMark | undefined => {
      for (const move of moves) {
        const at = pointMoved(word.at, along, 2 * move.along, up, 2 * move.up)
        const corners = cornersOf(at)
        if (!isInCell(tile, corners, 0)) continue
        if (clearUnder(room, around === 0 ? corners : grownWord({ ...word, at }, around), kinds))
          return { ...word, at }
      }
      return undefined
    }
    const found =
      firstOff(on.never | on.cut | on.rather, air) ??
      firstOff(on.never | on.cut | on.rather, 0) ??
      firstOff(on.never | on.cut, 0)
    if (!found) return []
    keepOff(room, [found], on.never)
    return [found]
  })

/** Moves along and up from a line, the nearest first. */
const moves = Array.from({ length: 2 * most.along + 1 }, (_, i) => i - most.along)
  .flatMap((along) => Array.from({ length: most.square + 1 }, (_, up) => ({ along, up })))
  .sort((a, b) => Math.hypot(a.along, a.up) - Math.hypot(b.along, b.up))
