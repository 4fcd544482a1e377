import type { Drawing } from '../../drawing/drawing.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../../geometry/affine.ts'
import { boxGrow, boxOverlaps, pointsBounds } from '../../geometry/bounds.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { datumMarks } from '../proof/datum.ts'
import { type Occupancy, occupyBox, occupyUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { keepOff, keepOffPath, on, wordClear, wordRoom } from '../room/word-room.ts'
import { rulerRoom } from '../ruler/ruler-room.ts'
import { rulerMarks } from '../ruler/rulers.ts'
import { type Tile, tilePoint } from '../tile/tile.ts'
import { jointBlocks, jointMarks, snapMarks } from '../tile/tile-joints.ts'
import { scaleFigure } from '../tile/vernier.ts'
import { bandPen } from '../tile/waste-band.ts'
import { timberBox } from '../timber/timber-box.ts'
import { timberSigns } from '../timber/timber-signs.ts'
import { clearedMarks } from './cleared-marks.ts'
import { snapWords } from './snap-words.ts'
import type { TileFacts } from './tile-facts.ts'
import { type TileLines, tileLines } from './tile-lines.ts'
import { placedTitle } from './title-place.ts'
import { wordsOnTile } from './words-on-tile.ts'

/** Round the words of a cross that is set out, mm. */
const datumAir = 3

/** All that one tile shows, in ideal page mm. */
export const tileDrawing = (tile: Tile, facts: TileFacts): Drawing => {
  const { pattern, units } = facts
  const shown = facts.shown.get(tile) ?? []
  const lines = tileLines(tile, facts)
  const snaps = snapMarks(tile)
  const datums = facts.datums.filter((d) => d.tile === tile.number).flatMap((d) => datumMarks(d, tile, units))

  // what aligns, the line and its band, other strokes; then each word beside what is there before it
  const room = roomOf(tile, facts, lines)
  // a scale is read without its figures too
  const joints = jointMarks(tile, lines.screws).filter(
    (mark) => mark.kind !== 'text' || mark.size > scaleFigure || wordClear(room, mark, on.never | on.cut),
  )
  for (const corners of jointBlocks(tile)) occupyUnder(room, corners, 0, on.never)
  keepOff(room, [...joints, ...snaps, ...datums], on.never)
  // other words would be read on with those of a cross
  for (const mark of datums)
    if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), datumAir, on.never)
  keepOff(room, lines.quiet, on.rather, tile.toWindow)
  keepOff(
    room,
    lines.marks.filter((mark) => mark.kind === 'group' || mark.layer !== 'cut'),
    on.never,
    tile.toWindow,
  )

  const boxes = shown.map((i) => timberBox(pattern.markPaths[i]!, tile.toWindow))
  const words = wordsOnTile(tile, facts, shown, boxes, room)
  const signs = timberSigns(boxes, tile, room)
  for (const marks of signs) keepOff(room, marks, on.rather)
  const rulers = rulerMarks(tile, pattern.points[0]!.at, units, rulerRoom(tile, pattern, lines.screws, room))
  for (const { marks } of rulers) keepOff(room, marks, on.ruler)
  const snap = snapWords(tile, units, room)
  keepOff(room, snap, on.never)
  const timbers = shown.map((i, k) => ({
    called: pattern.screws[i]!.called,
    timber: pattern.screws[i]!.timber,
    signed: signs[k]!.length > 0,
    screwed: !facts.missing.has(i),
    elsewhere: words.elsewhere.get(i),
  }))
  const title = placedTitle(tile, { ...facts, timbers }, room)
  return clearedMarks(tile, units, { lines, words, signs, rulers, joints, snaps, snap, datums, title })
}

/** What lies on a tile before any word: what is sawn and its band, screws, timbers. */
const roomOf = (
  tile: Tile,
  { pattern, sections }: TileFacts,
  { cuts, bands, marks }: TileLines,
): Occupancy => {
  const room = wordRoom(tile.width, tile.height)
  for (const path of cuts) keepOffPath(room, path, tile.toWindow, on.cut)
  for (const mark of [...bands, ...marks])
    if (mark.kind !== 'stroke') continue
    else if (mark.layer === 'cut') keepOffPath(room, mark.path, tile.toWindow, on.cut)
    else if (mark.layer === 'note')
      occupyPath(room, mark.path, tile.toWindow, bandPen.width / 2, on.cut | on.band)
  // a name on a screw would hide it
  for (const { middles } of pattern.screws)
    for (const middle of middles) {
      const { x, y } = tilePoint(tile, middle)
      occupyBox(room, boxGrow({ x0: x, y0: y, x1: x, y1: y }, screwRing), on.never)
    }
  // most lie on other pages
  const window = boxGrow(pointsBounds(tile.window), 1)
  for (const { corners, bounds } of sections)
    if (boxOverlaps(bounds, window))
      occupyUnder(
        room,
        corners.map((p) => affineApply(tile.toWindow, p)),
        0,
        on.timber,
      )
  return room
}
