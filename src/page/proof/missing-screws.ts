import { convexContains } from '../../geometry/clip.ts'
import type { Point } from '../../geometry/point.ts'
import type { Pattern, TimberScrews } from '../../pattern/pattern.ts'
import { screwRoom } from '../cover/shown-marks.ts'
import type { Tile } from '../tile/tile.ts'
import { timberNames } from '../tile/timber-names.ts'

/** A screw that is set out with a tape, and whose it is. */
export interface MissingScrew {
  readonly of: string
  readonly at: Point
}

/** What the map says of screws whose marks lie whole on no page. */
export interface MissingScrews {
  readonly which: string
  readonly screws: readonly MissingScrew[]
}

/** Whether the mark of a screw lies whole on a page. */
const isHeld = (p: Point, tiles: readonly Tile[]): boolean =>
  tiles.some(({ window }) => convexContains(window, p, -screwRoom))

/** Whether all screws of a timber do. */
export const isOnPaper = ({ middles }: TimberScrews, tiles: readonly Tile[]): boolean =>
  middles.every((p) => isHeld(p, tiles))

/** Null where all of them are on paper. */
export const missingScrews = ({ screws }: Pattern, tiles: readonly Tile[]): MissingScrews | null => {
  const missing = screws
    .map(({ called, timber, middles }) => ({
      called,
      timber,
      all: middles.length,
      places: middles.filter((p) => !isHeld(p, tiles)),
    }))
    .filter(({ places }) => places.length > 0)
  if (missing.length === 0) return null
  const of = (whole: boolean): string =>
    timberNames(missing.filter(({ all, places }) => whole === (places.length === all)))
  const groups = [
    ['the screws', of(true)],
    ['one of the screws', of(false)],
  ] as const
  const named = groups.filter(([, words]) => words.length > 0)
  return {
    which: `Not on ${tiles.length > 1 ? 'these pages' : 'this page'}: ${named.map(([what, words]) => `${what} of ${words}`).join(', ')}. Set them out back from the front edge, up from the bottom:`,
    screws: missing.flatMap(({ called, timber, places }) =>
      places.map((at) => ({ of: `${called} ${timber}`, at })),
    ),
  }
}
