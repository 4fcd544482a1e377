import { pointCross, pointSubtract } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import type { Tile } from './tile.ts'

/** Whether a page is taped to none before it: it is laid by its snap line alone. */
export const joinsNone = ({ first, joints }: Tile): boolean => !first && !joints.some(({ over }) => over)

/** Where the left arrowhead of a page's snap line lies along the rows from that of the first page: `187 mm beyond page 1's`. */
export const startWords = (tile: Tile, first: Tile, units: Units): string => {
  const { along, up } = startFrom(tile, first)
  const shown = showLength(Math.abs(along), units)
  const from =
    shown === showLength(0, units)
      ? `square ${up > 0 ? 'above' : 'below'}`
      : `${shown} ${units} ${along < 0 ? 'before' : 'beyond'}`
  return `${from} page ${first.number}'s`
}

const startFrom = (
  { snap: [p] }: Tile,
  { snap: [from, to] }: Tile,
): { readonly along: number; readonly up: number } => {
  const [ahead, off] = [pointSubtract(to, from), pointSubtract(p, from)]
  const long = Math.hypot(ahead.x, ahead.y)
  return {
    along: (off.x * ahead.x + off.y * ahead.y) / long,
    up: pointCross(ahead, off) / long,
  }
}
