import { convexContains } from '../../geometry/clip.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Tile } from '../tile/tile.ts'
import { timberNames } from '../tile/timber-names.ts'
import { shownTimbers } from '../timber/timber-edges.ts'

/**
 * On which pages each timber is found: the first that shows the middle of what lies between its screws, else one of these; and those of
 * its other screws that lie beyond. Where no page has a screw of it, the first that shows some of its section; '' where none does.
 */
export const timberPageWords = (pattern: Pattern, tiles: readonly Tile[]): string => {
  const shown = shownTimbers(pattern, tiles)
  const found = pattern.screws.flatMap(({ called, timber, middles }, i) => {
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
    const section = own.length > 0 ? undefined : tiles.find((tile) => shown.get(tile)!.includes(i))
    return [...own, ...(section ? [section] : [])].map(({ number }) => ({ called, timber, page: number }))
  })
  const pages = [...new Set(found.map(({ page }) => page))].sort((a, b) => a - b)
  const words = pages.map(
    (number) => `page ${number} ${timberNames(found.filter(({ page }) => page === number))}`,
  )
  return words.length === 0 ? '' : `Where the timbers are: ${words.join(', ')}.`
}
