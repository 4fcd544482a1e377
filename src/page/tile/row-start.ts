import { showLength, type Units } from '../../length.ts'
import type { Tile } from './tile.ts'

/** Whether a page is taped to none before it: it is laid by its snap line alone. */
export const joinsNone = ({ first, joints }: Tile): boolean => !first && !joints.some(({ over }) => over)

/** Where the left arrowhead of a page's snap line lies along the rows from that of the first page: `187 mm beyond page 1's`. */
export const startWords = (tile: Tile, first: Tile, units: Units): string => {
  const along = startAlong(tile, first)
  return `${showLength(Math.abs(along), units)} ${units} ${along < 0 ? 'before' : 'beyond'} page ${first.number}'s`
}

const startAlong = ({ snap: [p] }: Tile, { snap: [from, to] }: Tile): number =>
  ((p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y)) /
  Math.hypot(to.x - from.x, to.y - from.y)
