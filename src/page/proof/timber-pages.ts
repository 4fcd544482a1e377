import { convexContains } from '../../geometry/clip.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Tile } from '../tile/tile.ts'
import { timberNames } from '../tile/timber-names.ts'

/**
 * On which pages each timber is found: the first that shows the middle of what lies between its screws, else one of these; and those of
 * its other screws that lie beyond; '' where none does.
 */
export const timberPages = ({ screws }: Pattern, tiles: readonly Tile[]): string => {
  const found = screws.flatMap(({ called, timber, middles }) => {
    const middle = {
      x: middles.reduce((sum, { x }) => sum + x, 0) / middles.length,
      y: middles.reduce((sum, { y }) => sum + y, 0) / middles.length,
    }
    const own: Tile[] = []
    for (const p of [middle, ...middles]) {
      if (own.some(({ window }) => convexContains(window, p))) continue
      const tile = tiles.find(({ window }) => convexContains(window, p))
      if (tile) own.push(tile)
    }
    return own.map(({ number }) => ({ called, timber, page: number }))
  })
  const pages = [...new Set(found.map(({ page }) => page))].sort((a, b) => a - b)
  const words = pages.map(
    (number) => `page ${number} ${timberNames(found.filter(({ page }) => page === number))}`,
  )
  return words.length === 0 ? '' : `Where the timbers are: ${words.join(', ')}.`
}
