import { type Drawing, group, type Mark } from '../../drawing/drawing.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import { freePlace, leastPlace } from '../room/free-place.ts'
import { boxCounter, coarser, type Occupancy } from '../room/occupancy.ts'
import { anything, on } from '../room/word-room.ts'
import { isRowTurned, type Tile, tilePoint } from '../tile/tile.ts'
import {
  type TitleFacts,
  type TitleForm,
  type TitleSize,
  tileTitleBlock,
  titleSize,
  titleWords,
} from './title-block.ts'

/** Round the block, mm. */
const clear = 1.5

/** What a square counts that hides words or the cut line. */
const hidden = 20

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
  // where it must lie on something, on words and the cut line last of all
  const count = boxCounter(coarser(room, anything), (kinds) => (kinds & (on.said | on.cut) ? hidden : 1))
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
  let best: { readonly at: Point; readonly covered: number; readonly one: Tried } | undefined
  for (const one of tried) {
    const found = leastPlace(count, one.wide, one.high, cell)
    if (found && (!best || found.covered < best.covered)) best = { ...found, one }
  }
  return best ? [titleAt(best.at, best.one, tile, facts)] : []
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
