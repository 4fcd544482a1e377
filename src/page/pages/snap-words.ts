import type { Units } from '../../design/design.ts'
import { text } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { showLength } from '../../length.ts'
import { letters } from '../../pattern/pens.ts'
import { type Occupancy, weightIn } from '../room/occupancy.ts'
import { anything, on, wordClear, wordCovers } from '../room/word-room.ts'
import { isRowTurned, type Tile, tilePoint } from '../tile/tile.ts'

/** What is set freely keeps this far off all else, mm. */
const clear = 1.5

/** From a snap line to the words under it, mm; farther ones where a row begins, and over the figures of its ruler. */
const under = 1.2
const farther = [2.6, 4, 6]
const over = 6.4

/** From the edge of what is kept places are tried in steps; nearer and closer where a row begins, mm. */
const edge = { usual: 8, usualStep: 4, room: 3, step: 1 }

/**
 * The snap line's name and its height over the panel's bottom edge, along it at the first place that is clear. The page that begins a row
 * always says it, farther off the line or on its ruler if it must; on others it is left out where there is no room.
 */
export const snapWords = (tile: Tile, units: Units, room: Occupancy): readonly TextMark[] => {
  const height = tile.snap[0].y
  const from = `${showLength(Math.abs(height), units)} ${height < 0 ? 'below' : 'above'} the bottom edge`
  const words = `snap line ${tile.row}${isRowTurned(tile) ? '; its ruler begins at TOE' : `: ${from}`}`
  const line = tilePoint(tile, tile.snap[0]).y
  const at = (x: number, y: number): TextMark => text('joint', { x, y }, letters.small, words)
  const cell = tile.kept
  const usual = usualPlace(cell, line - under - letters.small, at, room)
  if (usual) return [usual]
  return tile.joints.some((joint) => joint.edge === 'left') ? [] : [anyPlace(cell, line, at, room)]
}

type At = (x: number, y: number) => TextMark

const usualPlace = (cell: Box, y: number, at: At, room: Occupancy): TextMark | undefined => {
  const { x0, y0, x1, y1 } = boxOf(at(0, y))
  const wide = x1 - x0 + 2 * clear
  let found: number | undefined
  let least = Number.POSITIVE_INFINITY
  for (let x = cell.x0 + edge.usual - clear; x + wide <= cell.x1 && least > 0; x += edge.usualStep) {
    const covered = weightIn(room, hidden, least, x, y0, x + wide, y1)
    if (covered >= least) continue
    least = covered
    found = x
  }
  const word = found !== undefined && at(found + clear, y)
  return word && wordClear(room, word, on.never | on.cut) ? word : undefined
}

/** What a square under the words counts by what it carries. */
const hidden = Array.from({ length: 256 }, (_, kinds) =>
  (kinds & anything) === 0 ? ((kinds & on.timber) === 0 ? 0 : 1) : 20,
)

/** Off as much as there is room for, the nearest to the line first; else where it hides least. */
const anyPlace = (cell: Box, line: number, at: At, room: Occupancy): TextMark => {
  const wide = boxOf(at(0, 0)).x1
  const count = Math.max(1, Math.floor((cell.x1 - cell.x0 - wide - 2 * edge.room) / edge.step) + 1)
  const rows = [...[under, ...farther].map((off) => line - off - letters.small), line + over, line + under]
  const places = rows.flatMap((y) =>
    Array.from({ length: count }, (_, k) => at(cell.x0 + edge.room + k * edge.step, y)),
  )
  for (const kinds of [anything & ~on.band, on.never | on.cut | on.ruler, on.never | on.cut])
    for (const word of places) if (wordClear(room, word, kinds)) return word
  const hidden = places.map((word) => wordCovers(room, word, on.never | on.cut))
  return places[hidden.indexOf(Math.min(...hidden))]!
}

const boxOf = (word: TextMark): Box => pointsBounds(textCorners(word, affineIdentity))
