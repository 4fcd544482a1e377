import type { Units } from '../../design/design.ts'
import { type Drawing, group, type Mark, stroke } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity, affineInvert } from '../../geometry/affine.ts'
import { boxGrow, boxOverlaps, boxUnion, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners, type Convex, pathClip } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pens } from '../../pattern/pens.ts'
import { ringedCross, screwRing } from '../../pattern/timber-marks.ts'
import { type Datum, datumMarks } from '../proof/datum.ts'
import { type Occupancy, occupyBox, occupyUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { grownWord, keepOff, keepOffPath, on, wordClear, wordRoom } from '../room/word-room.ts'
import { rulerCombs } from '../ruler/ruler-combs.ts'
import { rulerRoom } from '../ruler/ruler-room.ts'
import { noTick, rulerMarks } from '../ruler/rulers.ts'
import { brokenStrokes, type ClearZone, wordZone, wordZones, zonesBack } from '../tile/clear-zones.ts'
import { clipMarks } from '../tile/clip-marks.ts'
import { edgeNames } from '../tile/edge-names.ts'
import { woodOf } from '../tile/ground.ts'
import { keepWaste } from '../tile/keep-waste.ts'
import { levelMarks } from '../tile/level-marks.ts'
import { patternWords } from '../tile/pattern-words.ts'
import { pointNames } from '../tile/point-names.ts'
import { spliceNotes } from '../tile/splice-notes.ts'
import { type Tile, tilePoint } from '../tile/tile.ts'
import {
  bandZones,
  jointBlocks,
  jointMarks,
  jointWords,
  jointZones,
  signZones,
  snapMarks,
} from '../tile/tile-joints.ts'
import { scaleFigure } from '../tile/vernier.ts'
import { bandPen } from '../tile/waste-band.ts'
import { labelMarks, woodNote } from '../timber/label-marks.ts'
import { nameLean } from '../timber/name-lean.ts'
import { drawsScrew, otherScrews } from '../timber/other-screws.ts'
import type { Section } from '../timber/sections.ts'
import { timberBox } from '../timber/timber-box.ts'
import { timberEdges } from '../timber/timber-edges.ts'
import { timberSigns } from '../timber/timber-signs.ts'
import { snapWords } from './snap-words.ts'
import type { TitleFacts } from './title-block.ts'
import { placedTitle } from './title-place.ts'

export interface TileFacts extends Omit<TitleFacts, 'timbers'> {
  readonly units: Units
  readonly datums: readonly Datum[]
  /** of the whole cut line, on its waste side */
  readonly bands: readonly Path[]
  /** of the pattern */
  readonly tiles: readonly Tile[]
  /** which timbers each tile shows, by their places in `markPaths` */
  readonly shown: ReadonlyMap<Tile, readonly number[]>
  /** timbers of whose screws the pages do not show all, likewise */
  readonly missing: ReadonlySet<number>
  /** whether a point of the pattern lies on the wood */
  readonly wood: (p: Point) => boolean
  /** sections of timbers and plates, in the pattern */
  readonly sections: readonly Section[]
}

/** Round the words of a cross that is set out, mm. */
const datumAir = 3

/** Round the name of an edge: nearer, WASTE and it would be read as one. mm */
const nameApart = 5

/** Round the names of timbers, mm. */
const nameAir = 1.4

/** All that one tile shows, in ideal page mm. */
export const tileDrawing = (tile: Tile, facts: TileFacts): Drawing => {
  const { pattern, units } = facts
  const shown = facts.shown.get(tile) ?? []
  const drawn = linesOf(tile, facts)
  const snaps = snapMarks(tile)
  const datums = facts.datums.filter((d) => d.tile === tile.number).flatMap((d) => datumMarks(d, tile, units))

  // what aligns, the line and its band, other strokes; then each word beside what is there before it
  const room = roomOf(tile, facts, drawn)
  // a scale is read without its figures too
  const joints = jointMarks(tile, drawn.screws).filter(
    (mark) => mark.kind !== 'text' || mark.size > scaleFigure || wordClear(room, mark, on.never | on.cut),
  )
  for (const corners of jointBlocks(tile)) occupyUnder(room, corners, 0, on.never)
  keepOff(room, [...joints, ...snaps, ...datums], on.never)
  // other words would be read on with those of a cross
  for (const mark of datums)
    if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), datumAir, on.never)
  keepOff(room, drawn.quiet, on.rather, tile.toWindow)
  keepOff(
    room,
    drawn.marks.filter((mark) => mark.kind === 'group' || mark.layer !== 'cut'),
    on.never,
    tile.toWindow,
  )
  const points = pointNames(pattern, tile, room)
  const told = patternWords(pattern.marks, tile, room)
  const named = [...points, ...told, ...spliceNotes(pattern, tile, room)]
  const levels = levelMarks(pattern.levels, tile, room)
  const wood = woodOf(tile, facts.wood)
  const timbers = pattern.screws.length
  const boxes = shown.map((i) => timberBox(pattern.markPaths[i]!, tile.toWindow))
  const lean = nameLean(boxes)
  const labels = pattern.labels.flatMap((label, i) => {
    if (i < timbers && !shown.includes(i)) return []
    const marks = labelMarks(label, pattern.markPaths[i]!, tile, room, wood, lean)
    keepOff(room, marks, on.never)
    // words and signs that come later stand clear of a name
    for (const mark of marks)
      if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), nameAir, on.never)
    return marks
  })
  const words: TextMark[] = []
  const write = (more: readonly TextMark[]): void => {
    words.push(...more)
    keepOff(room, more, on.never)
  }
  for (const name of edgeNames(pattern, tile, room, told)) {
    write([name])
    // rather than not at all a word stands nearer
    occupyUnder(room, grownWord(name, nameApart), 0, on.rather)
  }
  write(keepWaste(tile, pattern, wood, room))
  write(jointWords(tile, room))
  const elsewhere = new Map<number, string>()
  for (const i of shown) {
    const said = otherScrews(pattern.screws[i]!, tile, facts.tiles)
    const note = said ? woodNote(said, pattern.markPaths[i]!, tile, room, lean) : []
    write(note)
    if (said && note.length === 0) elsewhere.set(i, said.words)
  }
  const signs = timberSigns(boxes, tile, room)
  for (const marks of signs) keepOff(room, marks, on.rather)
  const rulers = rulerMarks(tile, pattern.points[0]!.at, units, rulerRoom(tile, pattern, drawn.screws, room))
  for (const { marks } of rulers) keepOff(room, marks, on.ruler)
  const snap = snapWords(tile, units, room)
  keepOff(room, snap, on.never)
  const title = placedTitle(
    tile,
    {
      title: facts.title,
      pattern,
      total: facts.total,
      set: facts.set,
      units,
      start: facts.start,
      timbers: shown.map((i, k) => ({
        called: pattern.screws[i]!.called,
        timber: pattern.screws[i]!.timber,
        signed: signs[k]!.length > 0,
        screwed: !facts.missing.has(i),
        elsewhere: elsewhere.get(i),
      })),
      printer: facts.printer,
    },
    room,
  )

  // where the title has no free place, or the snap line's words
  const [snapZones, titleZones] = [wordZones(snap), wordZones(title)]
  const titled = [...snapZones, ...titleZones].map(pointsBounds)
  // most lie off all of them
  const about = titled.length > 0 ? titled.reduce(boxUnion) : null
  const isTitled = (mark: Mark): boolean => {
    if (mark.kind !== 'stroke' && mark.kind !== 'text') return false
    const box = mark.kind === 'stroke' ? pathBounds(mark.path) : pointsBounds(wordZone(mark))
    return about !== null && boxOverlaps(about, box) && titled.some((other) => boxOverlaps(other, box))
  }
  const ruled = rulerCombs(
    rulers.map((tick) => (tick.marks.some(isTitled) ? noTick : tick)),
    units,
  )

  const zones = (shapes: readonly Convex[]): readonly ClearZone[] => zonesBack(shapes, tile.toWindow)
  const read = zones([
    ...wordZones([...named, ...labels, ...words, ...ruled]),
    ...snapZones,
    ...wordZones(datums),
    ...titleZones,
    ...wordZones(levels, tile.toWindow),
  ])
  const signed = zones(signZones(tile))
  return [
    group(tile.toPage, [
      group(tile.toWindow, [
        // grey under a scale hides nothing of it
        ...(drawn.bands.length === 0
          ? []
          : brokenStrokes(drawn.bands, [...signed, ...zones(bandZones(tile)), ...read])),
        ...brokenStrokes(drawn.quiet, [...zones(jointZones(tile)), ...signed, ...read]),
        ...drawn.cuts.map((path) => stroke('cut', path, pens.cut)),
        ...drawn.marks,
        ...levels,
      ]),
      ...named,
      ...labels,
      ...signs.flat(),
      ...words,
      ...ruled,
      ...joints,
      ...snaps,
      ...snap,
      ...datums,
      ...title,
    ]),
  ]
}

/** Less of a chain line or a plate's edge in the corner of a page says nothing, mm. */
const leastQuiet = 12

/** The lines of a pattern that a tile carries, in the pattern. */
interface Lines {
  readonly cuts: readonly Path[]
  readonly bands: Drawing
  readonly quiet: Drawing
  /** signs whole or not at all, screws among them */
  readonly marks: Drawing
  /** middles of the screws that are drawn */
  readonly screws: readonly Point[]
}

const linesOf = (tile: Tile, { pattern, bands }: TileFacts): Lines => {
  // whole within the window, whichever way it runs
  const inner = boxCorners(
    boxGrow({ x0: 0, y0: 0, x1: tile.width, y1: tile.height }, -bandPen.width / 2),
  ).map((p) => affineApply(affineInvert(tile.toWindow), p))
  // a screw on the page that keeps its middle, and no other
  const screws = pattern.screws.map(({ middles, angle }) => ({
    angle,
    middles: middles.filter((at) => drawsScrew(tile, at)),
  }))
  return {
    screws: screws.flatMap(({ middles }) => middles),
    cuts: pathClip(pattern.cut, tile.window),
    bands: bands.flatMap((path) => pathClip(path, inner)).map((path) => stroke('note', path, bandPen)),
    quiet: [
      ...timberEdges(pattern, tile.cell),
      ...clipMarks(pattern.quiet, tile).filter(
        (mark) => mark.kind === 'stroke' && pathLength(mark.path) > leastQuiet,
      ),
    ],
    marks: [
      ...clipMarks(
        pattern.marks.filter(({ kind }) => kind !== 'text'),
        tile,
      ),
      ...screws.flatMap(({ middles, angle }) => middles.flatMap((at) => ringedCross(at, angle))),
    ],
  }
}

/** What lies on a tile before any word. */
const roomOf = (tile: Tile, { pattern, sections }: TileFacts, { cuts, bands, marks }: Lines): Occupancy => {
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
