import type { Units } from '../design/design.ts'
import { type Drawing, group, stroke, text } from '../drawing/drawing.ts'
import { type TextMark, textCorners } from '../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../geometry/affine.ts'
import { pointsBounds } from '../geometry/bounds.ts'
import { convexContains, pathClip } from '../geometry/clip.ts'
import { type Path, pathSegments } from '../geometry/path.ts'
import { pathSample } from '../geometry/sample.ts'
import { showLength } from '../length.ts'
import { letters, pens } from '../pattern/pens.ts'
import { clipMarks } from './clip-marks.ts'
import { type Datum, datumMarks } from './datum.ts'
import { keepWaste } from './keep-waste.ts'
import { labelMarks } from './label-marks.ts'
import { freePlace, type Occupancy, occupancyOf, occupyBox, occupyPoints, takenIn } from './occupancy.ts'
import { rulerMarks } from './rulers.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'
import { jointMarks, snapMarks } from './tile-joints.ts'
import { type TitleFacts, titleBlock, titleSize } from './title-block.ts'

export interface TileFacts extends TitleFacts {
  readonly units: Units
  readonly datums: readonly Datum[]
  /** of the whole outline, on its waste side */
  readonly ticks: readonly Path[]
}

/** All that one tile shows, in ideal page mm. */
export const tileDrawing = (tile: Tile, facts: TileFacts): Drawing => {
  const { pattern, units } = facts
  const cuts = pathClip(pattern.outline, tile.window)
  const marks = [...clipMarks(pattern.marks, tile), ...labelMarks(pattern.labels, tile)]
  const ticks = facts.ticks.filter((path) =>
    [path.start, path.pieces[0]!.to].every((p) => convexContains(tile.window, p)),
  )
  const empty = (): Occupancy => occupancyOf(tile.width, tile.height)
  const [cut, shown, taken] = [empty(), empty(), empty()]
  const occupyCuts = (map: Occupancy): void => {
    for (const path of [...cuts, ...ticks]) occupyPath(map, path, tile)
  }
  occupyCuts(cut)
  occupyMarks(shown, marks, tile.frame)
  const rulers = rulerMarks(tile, units, (box) => takenIn(cut, box) + takenIn(shown, box) > 0)
  occupyMarks(shown, snapMarks(tile), affineIdentity)
  const joints = jointMarks(tile, cut, shown)
  const datums = facts.datums
    .filter((d) => d.tile === tile.name)
    .flatMap((d) => datumMarks(d, tile, pattern, units))

  const take = (drawing: Drawing, map = affineIdentity): void => occupyMarks(taken, drawing, map)
  take(marks, tile.frame)
  take([...joints, ...datums, ...rulers, ...snapMarks(tile)])
  const words = keepWaste(tile, pattern, taken)
  take(words)
  // after them: they stand closer to the cut line than anything else
  occupyCuts(taken)
  const snap = snapLabel(tile, facts, taken)
  take(snap)

  return [
    group(tile.toPage, [
      group(tile.frame, [
        ...cuts.map((path) => stroke('cut', path, pens.cut)),
        ...ticks.map((path) => stroke('note', path, pens.tick)),
        ...marks,
      ]),
      ...words,
      ...rulers,
      ...joints,
      ...snapMarks(tile),
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
