import type { Units } from '../../design/design.ts'
import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../../geometry/affine.ts'
import { pointsBounds } from '../../geometry/bounds.ts'
import { convexContains, pathClip } from '../../geometry/clip.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import { showLength } from '../../length.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Datum, datumMarks } from '../proof/datum.ts'
import {
  freePlace,
  type Occupancy,
  occupancyOf,
  occupyBox,
  occupyPoints,
  takenIn,
} from '../room/occupancy.ts'
import { keepOff, keepOffPath, wordClear, wordRoom } from '../room/word-room.ts'
import { clipMarks } from '../tile/clip-marks.ts'
import { keepWaste } from '../tile/keep-waste.ts'
import { labelMarks } from '../tile/label-marks.ts'
import { patternWords } from '../tile/pattern-words.ts'
import { rulerMarks } from '../tile/rulers.ts'
import { type Tile, tileCell, tilePoint } from '../tile/tile.ts'
import { jointMarks, jointWords, snapMarks } from '../tile/tile-joints.ts'
import { type TitleFacts, titleBlock, titleSize } from '../tile/title-block.ts'
import { scaleFigure } from '../tile/vernier.ts'

export interface TileFacts extends TitleFacts {
  readonly units: Units
  readonly datums: readonly Datum[]
  /** of the whole outline, on its waste side */
  readonly ticks: readonly Path[]
  /** the whole outline by points */
  readonly polygon: readonly Point[]
}

/** All that one tile shows, in ideal page mm. */
export const tileDrawing = (tile: Tile, facts: TileFacts): Drawing => {
  const { pattern, units } = facts
  const cuts = pathClip(pattern.outline, tile.window)
  const ticks = facts.ticks.filter((path) =>
    [path.start, path.pieces[0]!.to].every((p) => convexContains(tile.window, p)),
  )
  const strokes = clipMarks(
    pattern.marks.filter(({ kind }) => kind !== 'text'),
    tile,
  )
  const snaps = snapMarks(tile)
  const datums = facts.datums
    .filter((d) => d.tile === tile.name)
    .flatMap((d) => datumMarks(d, tile, pattern, units))

  // what words never stand on: what aligns and each other, then the cut line; and the rest
  const room = (): Occupancy => wordRoom(tile.width, tile.height)
  const [never, cut, rather] = [room(), room(), room()]
  for (const path of [...cuts, ...ticks]) keepOffPath(cut, path, tile.toWindow)
  // a scale is read without its figures too
  const joints = jointMarks(tile).filter(
    (mark) => mark.kind !== 'text' || mark.size > scaleFigure || wordClear([cut], mark),
  )
  keepOff(never, [...joints, ...snaps, ...datums])
  keepOff(rather, strokes, tile.toWindow)
  const named = patternWords(pattern.marks, tile, never, [cut])
  const labels = pattern.labels.flatMap((label, i) => {
    const marks = labelMarks(label, pattern.markPaths[i]!, tile, [never, cut], rather)
    keepOff(never, marks)
    return marks
  })
  const words: TextMark[] = []
  const write = (more: readonly TextMark[]): void => {
    words.push(...more)
    keepOff(never, more)
  }
  write(keepWaste(tile, pattern, facts.polygon, { never, rather }))
  write(jointWords(tile, [never, cut], rather))
  const said = room()
  keepOff(
    said,
    [...named, ...labels, ...words, ...datums].filter(({ kind }) => kind === 'text'),
  )
  const rulers = rulerMarks(tile, units).filter((mark) =>
    mark.kind === 'text'
      ? wordClear([never, cut, rather], mark)
      : mark.kind === 'stroke' &&
        pathSample(mark.path, 0.5).every(({ x, y }) => takenIn(said, { x0: x, y0: y, x1: x, y1: y }) === 0),
  )

  const taken = occupancyOf(tile.width, tile.height)
  const take = (drawing: Drawing, map = affineIdentity): void => occupyMarks(taken, drawing, map)
  take(strokes, tile.toWindow)
  take([...named, ...labels, ...words, ...joints, ...datums, ...rulers, ...snaps])
  for (const path of [...cuts, ...ticks]) occupyPath(taken, path, tile)
  const snap = snapLabel(tile, facts, taken).filter((word) => wordClear([never, cut], word))
  take(snap)

  return [
    group(tile.toPage, [
      group(tile.toWindow, [
        ...cuts.map((path) => stroke('cut', path, pens.cut)),
        ...ticks.map((path) => stroke('note', path, pens.tick)),
        ...strokes,
      ]),
      ...named,
      ...labels,
      ...words,
      ...rulers,
      ...joints,
      ...snaps,
      ...snap,
      ...datums,
      ...placedTitle(tile, facts, taken),
    ]),
  ]
}

const occupyPath = (taken: Occupancy, path: Path, tile: Tile): void =>
  occupyPoints(
    taken,
    pathSample(path, 3).map((p) => tilePoint(tile, p)),
    1.5,
  )

const occupyMarks = (taken: Occupancy, drawing: Drawing, map: Parameters<typeof affineApply>[0]): void => {
  for (const mark of drawing) {
    if (mark.kind === 'text') occupyBox(taken, pointsBounds(textCorners(mark, map)))
    else if (mark.kind !== 'group')
      occupyPoints(
        taken,
        pathSegments(mark.path).length === 0 ? [] : pathSample(mark.path, 3).map((p) => affineApply(map, p)),
        0.5,
      )
  }
}

/** The snap line's name and its height over the panel's bottom edge, where there is room along it. */
const snapLabel = (tile: Tile, { units }: TileFacts, taken: Occupancy): readonly TextMark[] => {
  const level = Math.abs(tile.snap[0].y - tile.snap[1].y) < 1e-6
  const words = `snap line ${tile.row}${level ? `: ${showLength(tile.snap[0].y, units)} above the bottom edge` : ''}`
  const cell = tileCell(tile)
  const y = tilePoint(tile, tile.snap[0]).y - 1.2 - letters.small
  const at = (x: number): TextMark => text('joint', { x, y }, letters.small, words) as TextMark
  const box = pointsBounds(textCorners(at(0), affineIdentity))
  // the line itself is taken: look a little below it
  const place = freePlace(taken, box.x1 - box.x0, 1, { ...cell, x0: cell.x0 + 8, y0: y - 1, y1: y })
  return place ? [at(place.at.x)] : []
}

/** The title block in the freest place of what the page keeps, smaller where it must be. */
const placedTitle = (tile: Tile, facts: TileFacts, taken: Occupancy): Drawing => {
  const size = titleSize(tile, facts)
  const cell = tileCell(tile)
  let best:
    | { readonly at: { x: number; y: number }; readonly covered: number; readonly scale: number }
    | undefined
  for (const scale of [1, 0.85, 0.7]) {
    const found = freePlace(taken, size.width * scale, size.height * scale, {
      x0: cell.x0 + 2,
      y0: cell.y0 + 2,
      x1: cell.x1 - 2,
      y1: cell.y1 - 2,
    })
    if (found && (!best || found.covered < best.covered)) best = { ...found, scale }
    if (best?.covered === 0) break
  }
  if (!best) return []
  const { at, scale } = best
  return [group([scale, 0, 0, scale, at.x, at.y], titleBlock(tile, facts))]
}
