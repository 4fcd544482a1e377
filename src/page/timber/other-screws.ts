import { convexContains } from '../../geometry/clip.ts'
import type { Point } from '../../geometry/point.ts'
import type { TimberScrews } from '../../pattern/pattern.ts'
import { screwRoom } from '../cover/shown-marks.ts'
import type { Tile } from '../tile/tile.ts'

/** Whether a page draws a screw: the one that keeps its middle, where the mark lies whole on paper. */
export const drawsScrew = ({ cell, window }: Tile, at: Point): boolean =>
  convexContains(cell, at) && convexContains(window, at, -screwRoom)

/** What a page says of those screws of a timber that it does not draw, and shorter; null where it draws all. The map tells where those lie that no page has. */
export const otherScrews = (
  { middles }: TimberScrews,
  tile: Tile,
  tiles: readonly Tile[],
): { readonly words: string; readonly shorter: string } | null => {
  const others = middles.filter((at) => !drawsScrew(tile, at))
  if (others.length === 0) return null
  const pages = others.map((at) => tiles.find((other) => drawsScrew(other, at))?.number ?? null)
  const numbers = [...new Set(pages.filter((page) => page !== null))].sort((a, b) => a - b)
  const where = [
    ...(numbers.length > 0 ? [`page${numbers.length > 1 ? 's' : ''} ${numbers.join(', ')}`] : []),
    ...(pages.includes(null) ? ['see map'] : []),
  ]
  const which = others.length < middles.length ? 'other screw' : 'screw'
  return {
    words: `${which}${others.length > 1 ? 's' : ''}: ${where.join(', ')}`,
    shorter: `${others.length} screw${others.length > 1 ? 's' : ''}: ${where.join(', ')}`,
  }
}
