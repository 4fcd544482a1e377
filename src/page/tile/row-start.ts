import type { Tile } from './tile.ts'

/** Whether a page is taped to none before it: it is laid by its snap line alone. */
export const joinsNone = ({ first, joints }: Tile): boolean => !first && !joints.some(({ over }) => over)

/** How far along the rows the left arrowhead of a page's snap line lies from that of the first page, mm. */
export const startAlong = ({ snap: [p] }: Tile, { snap: [from, to] }: Tile): number =>
  ((p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y)) /
  Math.hypot(to.x - from.x, to.y - from.y)
