import { type Drawing, group } from '../../drawing/drawing.ts'
import { boxGrow } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import { freePlace } from '../room/free-place.ts'
import { boxCounter, coarser, type Occupancy } from '../room/occupancy.ts'
import { anything, on } from '../room/word-room.ts'
import { type Tile, tileCell } from '../tile/tile.ts'
import { type TitleFacts, type TitleSize, titleBlock, titleSize } from './title-block.ts'

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

/** The title block in the freest place of what the page keeps, smaller where it must be. */
export const placedTitle = (tile: Tile, facts: TitleFacts, room: Occupancy): Drawing => {
  const cell = tileCell(tile)
  let best:
    | {
        readonly by: (typeof titleTries)[number]
        readonly size: TitleSize
        readonly at: Point
        readonly covered: number
      }
    | undefined
  // where it must lie on something, on words and the cut line last of all
  const count = boxCounter(coarser(room, 4), (kinds) =>
    kinds & (on.said | on.cut) ? hidden : kinds & anything ? 1 : 0,
  )
  for (const by of titleTries) {
    const size = titleSize(tile, facts, by.form)
    const [wide, high] = [size.width * by.scale + 2 * clear, size.height * by.scale + 2 * clear]
    const found = freePlace(count, wide, high, boxGrow(cell, clear - 2))
    if (found && (!best || found.covered < best.covered)) best = { by, size, ...found }
    if (best?.covered === 0) break
  }
  if (!best) return []
  const {
    by: { scale, form },
    size,
    at,
  } = best
  return [group([scale, 0, 0, scale, at.x + clear, at.y + clear], titleBlock(tile, facts, form, size))]
}
