import { type Drawing, group, type Mark } from '../../drawing/drawing.ts'
import { type Box, boxGrow, boxOverlaps } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import { freePlace, leastPlace } from '../room/free-place.ts'
import { type BoxCount, boxCounter, coarser, type Occupancy } from '../room/occupancy.ts'
import { anything, on } from '../room/word-room.ts'
import { isRowTurned, type Tile, tilePoint } from '../tile/tile.ts'
import {
  type TitleFacts,
  type TitleForm,
  type TitlePart,
  type TitleSize,
  tileTitleBlock,
  titleParts,
  titleSize,
  titleWords,
} from './title-block.ts'

/** Round the block, mm. */
const clear = 1.5

/** What a square counts that hides words or the cut line, and that hides something else that aligns; any other counts one. */
const hidden = 20
const aligned = 4
const weigh = (kinds: number): number =>
  (kinds & anything) === 0
    ? 0
    : (kinds & (on.said | on.cut)) !== 0
      ? hidden
      : (kinds & on.never) !== 0
        ? aligned
        : 1

/** How the title block is tried: as it is, smaller as far as it can be read, without its map; narrow where nothing else has a place. */
const titleTries = [
  { scale: 1, form: 'mapped' },
  { scale: 1, form: 'stacked' },
  { scale: letters.least / letters.small, form: 'mapped' },
  { scale: letters.least / letters.small, form: 'stacked' },
  { scale: letters.least / letters.small, form: 'plain' },
  { scale: letters.least / letters.small, form: 'narrow' },
] as const

/** The title block in the freest place of what the page keeps, smaller where it must be; where none is free, where it hides least. */
export const placedTitle = (tile: Tile, facts: TitleFacts, room: Occupancy): Drawing => {
  const cell = boxGrow(tile.kept, clear - 2)
  const panel = panelOf(tile, facts)
  const count = boxCounter(coarser(room, anything), () => 1)
  const said = titleWords(tile, facts)
  const tried: Tried[] = []
  const sized = ({ scale, form }: (typeof titleTries)[number]): Tried => {
    const size = titleSize(tile, said, form)
    return {
      scale,
      form,
      size,
      wide: size.width * scale + 2 * clear,
      high: size.height * scale + 2 * clear,
    }
  }
  // rather under its arrows or smaller on the panel than off it
  if (panel)
    for (const form of titleTries.slice(0, 4)) {
      const one = sized(form)
      const at = freePlace(count, one.wide, one.high, panel)
      if (at) return [titleAt(at, one, tile, facts)]
    }
  for (const form of titleTries) {
    const one = sized(form)
    const at = freePlace(count, one.wide, one.high, cell)
    if (at) return [titleAt(at, one, tile, facts)]
    tried.push(one)
  }
  // in smaller squares, as any place is tight; where it must lie on something, on words and the cut line last of all
  const near = boxCounter(room, weigh)
  let best = partsApart(titleParts(tile, said), near, cell)
  for (const one of tried) {
    if (best?.covered === 0) break
    const found = leastPlace(near, one.wide, one.high, cell)
    if (found && (!best || found.covered < best.covered))
      best = { covered: found.covered, marks: [titleAt(found.at, one, tile, facts)] }
  }
  return best ? best.marks : []
}

/** `covered`: what lies under it, counted. */
interface Laid {
  readonly covered: number
  readonly marks: Drawing
}

/** The parts of the block each in a place of its own, the largest first; null where one has none on the page. */
const partsApart = (parts: readonly TitlePart[], count: BoxCount, cell: Box): Laid | null => {
  const taken: Box[] = []
  const beside: BoxCount = (x0, y0, x1, y1) =>
    taken.some((box) => boxOverlaps(box, { x0, y0, x1, y1 })) ? onPart : count(x0, y0, x1, y1)
  let covered = 0
  const marks: Mark[] = []
  for (const part of parts.toSorted((a, b) => b.width * b.height - a.width * a.height)) {
    const found = partPlace(part, beside, cell)
    if (!found) return null
    covered += found.covered
    taken.push(found.box)
    const { scale, box } = found
    marks.push(group([scale, 0, 0, scale, box.x0 + clear, box.y0 + clear], part.marks))
  }
  return { covered, marks }
}

/** More than any place counts. */
const onPart = 1e6

/** Where nothing lies, smaller where it must be; else where it hides least. */
const partPlace = (
  { width, height }: TitlePart,
  count: BoxCount,
  cell: Box,
): { readonly scale: number; readonly box: Box; readonly covered: number } | null => {
  const boxAt = ({ x, y }: Point, scale: number): Box => ({
    x0: x,
    y0: y,
    x1: x + width * scale + 2 * clear,
    y1: y + height * scale + 2 * clear,
  })
  const sizes = [1, letters.least / letters.small]
  for (const scale of sizes) {
    const { x1, y1 } = boxAt({ x: 0, y: 0 }, scale)
    const at = freePlace(count, x1, y1, cell)
    if (at) return { scale, box: boxAt(at, scale), covered: 0 }
  }
  const scale = sizes[1]!
  const { x1, y1 } = boxAt({ x: 0, y: 0 }, scale)
  const found = leastPlace(count, x1, y1, cell)
  return found && { scale, box: boxAt(found.at, scale), covered: found.covered }
}

/** So much of a page may lie above or below the panel before its title is looked for beside that, mm. */
const mostOff = 60

/** What the page keeps no higher and no lower than the panel, where much of it hangs over; null where rows are turned or little does. */
const panelOf = (tile: Tile, { pattern: { height } }: TitleFacts): Box | null => {
  if (isRowTurned(tile)) return null
  const cell = boxGrow(tile.kept, clear - 2)
  const y0 = Math.max(cell.y0, tilePoint(tile, { x: 0, y: 0 }).y)
  const y1 = Math.min(cell.y1, tilePoint(tile, { x: 0, y: height }).y)
  return y0 - cell.y0 + cell.y1 - y1 > mostOff && y1 > y0 ? { ...cell, y0, y1 } : null
}

interface Tried {
  readonly scale: number
  readonly form: TitleForm
  readonly size: TitleSize
  /** with air round it, mm */
  readonly wide: number
  readonly high: number
}

const titleAt = ({ x, y }: Point, { scale, form, size }: Tried, tile: Tile, facts: TitleFacts): Mark =>
  group([scale, 0, 0, scale, x + clear, y + clear], tileTitleBlock(tile, facts, form, size))
