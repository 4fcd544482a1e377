import { convexContains } from '../../geometry/clip.ts'
import { numberList } from '../../length/word-list.ts'
import type { Pattern, TimberScrews } from '../../pattern/pattern.ts'
import { screwRoom } from '../cover/shown-marks.ts'
import type { Tile } from '../tile/tile.ts'

/** What the map says of screws whose marks lie whole on no page; none where all do. */
export const missingScrewsWords = ({ screws }: Pattern, tiles: readonly Tile[]): readonly string[] => {
  const missing = screws
    .map((timber) => ({
      timber,
      count: timber.middles.filter((p) => !tiles.some(({ window }) => convexContains(window, p, -screwRoom)))
        .length,
    }))
    .filter(({ count }) => count > 0)
  if (missing.length === 0) return []
  const of = (all: boolean): readonly number[] =>
    missing
      .filter(({ timber, count }) => all === (count === timber.middles.length))
      .map(({ timber }) => timber.timber)
  const groups = [
    ['the screws', of(true)],
    ['one of the screws', of(false)],
  ] as const
  const named = groups.filter(([, numbers]) => numbers.length > 0)
  return [
    `Not on these pages: ${named.map(([what, numbers]) => `${what} of ${numberList('stud', numbers)}`).join(', ')}. ` +
      `Draw the stud from its place in "traceply figures"; its screws lie ${placesOf(missing.map(({ timber }) => timber))}.`,
  ]
}

const placesOf = (timbers: readonly TimberScrews[]): string =>
  [...new Set(timbers.map(({ words }) => words))].join('; ')
