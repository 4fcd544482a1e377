import { type Drawing, group, type Mark } from '../../drawing/drawing.ts'
import { boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import { freePlace, leastPlace } from '../room/free-place.ts'
import { boxCounter, coarser, type Occupancy } from '../room/occupancy.ts'
import { anything, on } from '../room/word-room.ts'
import { type Tile, tileCell } from '../tile/tile.ts'
import { type TitleFacts, type TitleForm, type TitleSize, titleBlock, titleSize } from './title-block.ts'

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
  const within = boxGrow(tileCell(tile), clear - 2)
  // where it must lie on something, on words and the cut line last of all
  const count = boxCounter(coarser(room, 4, anything), (kinds) => (kinds & (on.said | on.cut) ? hidden : 1))
  const tried: Tried[] = []
  for (const { scale, form } of titleTries) {
    const size = titleSize(tile, facts, form)
    const [wide, high] = [size.width * scale + 2 * clear, size.height * scale + 2 * clear]
    const one = { scale, form, size, wide, high }
    const at = freePlace(count, wide, high, within)
    if (at) return [titleAt(at, one, tile, facts)]
    tried.push(one)
  }
  let best: { readonly at: Point; readonly covered: number; readonly one: Tried } | undefined
  for (const one of tried) {
    const found = leastPlace(count, one.wide, one.high, within)
    if (found && (!best || found.covered < best.covered)) best = { ...found, one }
  }
  return best ? [titleAt(best.at, best.one, tile, facts)] : []
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
  group([scale, 0, 0, scale, x + clear, y + clear], titleBlock(tile, facts, form, size))
