import { type Point, pointDistance } from '../geometry/point.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Datum } from './datum.ts'
import type { Tile } from './tile.ts'

/** A long distance to be checked on the taped paper, and again on the sawn wood; mm. */
export interface SurveyLine {
  readonly words: string
  readonly value: number
  readonly tolerance: number
}

/** Careful taping is off by no more than this at a joint, mm; and no rule is read better than to `least`. */
const eachJoint = 0.2
const least = 0.4
const most = 1.25

/** Sets of fewer pages lean on the snap lines. */
export const surveyLeast = 8

/**
 * The longest distances between the numbered crosses, then chord and middle rise of the curve. A tolerance grows with the
 * joints between the ends, so that a slip of 0.25 mm always the same way shows wherever three joints or more lie between.
 */
export const surveyLines = (
  tiles: readonly Tile[],
  pattern: Pattern,
  datums: readonly Datum[],
): readonly SurveyLine[] => {
  const joints = jointsBetween(tiles)
  const tolerance = (a: Tile | undefined, b: Tile | undefined): number =>
    Math.min(most, Math.max(least, eachJoint * (a && b ? joints(a.name, b.name) : 1)))
  const tileOf = (name: string): Tile | undefined => tiles.find((tile) => tile.name === name)
  const pairs = datums.flatMap((a, i) =>
    datums.slice(i + 1).map(
      (b): SurveyLine => ({
        words: `cross ${a.number} to cross ${b.number}${a.onWood && b.onWood ? '' : ' (on paper only)'}`,
        value: pointDistance(a.at, b.at),
        tolerance: tolerance(tileOf(a.tile), tileOf(b.tile)),
      }),
    ),
  )
  const ends = pattern.points.map(({ at }) => tileAt(tiles, at))
  const curve = pattern.distances
    .filter((distance) => distance.ofCurve)
    .map(({ words, value }): SurveyLine => ({ words, value, tolerance: tolerance(ends[0], ends.at(-1)) }))
  return [...pairs.sort((a, b) => b.value - a.value).slice(0, 5), ...curve]
}

/** The tile whose own part holds a point; the nearest one where none does. */
const tileAt = (tiles: readonly Tile[], p: Point): Tile | undefined => {
  const middle = (tile: Tile): Point => ({
    x: (tile.cell[0]!.x + tile.cell[2]!.x) / 2,
    y: (tile.cell[0]!.y + tile.cell[2]!.y) / 2,
  })
  return tiles.reduce<Tile | undefined>(
    (best, tile) => (best && pointDistance(middle(best), p) <= pointDistance(middle(tile), p) ? best : tile),
    undefined,
  )
}

/** Fewest joints on a way from page to page. */
const jointsBetween = (tiles: readonly Tile[]) => {
  const near = new Map(tiles.map((tile) => [tile.name, tile.joints.map((joint) => joint.neighbour.name)]))
  return (from: string, to: string): number => {
    let [ring, steps] = [[from], 0]
    const seen = new Set(ring)
    while (ring.length > 0 && !ring.includes(to)) {
      ring = ring.flatMap((name) => near.get(name) ?? []).filter((name) => !seen.has(name))
      for (const name of ring) seen.add(name)
      steps++
    }
    return steps
  }
}
