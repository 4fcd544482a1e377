import { convexContains } from '../../geometry/clip.ts'
import { numberList, wordList } from '../../length/word-list.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Tile } from '../tile/tile.ts'

/** On which page each timber is found: the first that shows the middle of what lies between its screws, else one of these; '' where none does. */
export const timberPages = ({ screws }: Pattern, tiles: readonly Tile[]): string => {
  const found = screws.flatMap(({ called, timber, middles }) => {
    const middle = {
      x: middles.reduce((sum, { x }) => sum + x, 0) / middles.length,
      y: middles.reduce((sum, { y }) => sum + y, 0) / middles.length,
    }
    const page = [middle, ...middles]
      .map((p) => tiles.find(({ window }) => convexContains(window, p)))
      .find((tile) => tile !== undefined)
    return page ? [{ called, timber, page: page.number }] : []
  })
  const pages = [...new Set(found.map(({ page }) => page))].sort((a, b) => a - b)
  const words = pages.map((number) => {
    const here = (noun: 'stud' | 'timber'): readonly string[] => {
      const numbers = found.filter(({ called, page }) => called === noun && page === number)
      return numbers.length === 0
        ? []
        : [
            numberList(
              noun,
              numbers.map(({ timber }) => timber),
            ),
          ]
    }
    return `page ${number} ${wordList([...here('stud'), ...here('timber')])}`
  })
  return words.length === 0 ? '' : `Where the timbers are: ${words.join(', ')}.`
}
