import type { Units } from '../../design/design.ts'
import { convexContains } from '../../geometry/clip.ts'
import { type Point, pointBetween, pointDistance } from '../../geometry/point.ts'
import { showLength, showTolerance } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pointRoom } from '../cover/shown-points.ts'
import type { Tile } from '../tile/tile.ts'
import type { Datum } from './datum.ts'

/** A long distance to be checked on the taped paper, and again on the sawn wood; mm. */
export interface SurveyLine {
  /** between two crosses, from TOE to LIP, or how far the curve lies from that line at its middle */
  readonly kind: 'crosses' | 'chord' | 'rise'
  readonly words: string
  readonly value: number
  readonly tolerance: number
  /** whether it can be measured again on the wood: what lies on the waste is gone once it is sawn */
  readonly onWood: boolean
}

/** Careful taping, one standard deviation, mm: a joint, what a page's own turn adds at its crosses, a tape's reading. */
const careful = { joint: 0.15, turn: 0.15, tape: 0.25 / Math.sqrt(3) } as const

/** So wide that careful taping meets all lines of a survey together 19 times in 20. */
const wide = 2.2

/** Sets of fewer pages lean on the snap lines. */
export const surveyLeast = 8

/**
 * The distances between all crosses with letters, longest first, then chord and middle rise of the curve. Joints add like a random
 * walk, so a tolerance grows with the root of their number; a slip that is always the same way grows with the number itself.
 */
export const surveyLines = (
  tiles: readonly Tile[],
  pattern: Pattern,
  datums: readonly Datum[],
): readonly SurveyLine[] => {
  const between = jointsBetween(tiles)
  const tolerance = (joints: number, turns = 1): number => {
    const { joint, turn, tape } = careful
    const spread = Math.sqrt(joints * joint ** 2 + turns * turn ** 2 + tape ** 2)
    return Math.round(wide * spread * 10) / 10
  }
  const pairs = datums.flatMap((a, i) =>
    datums.slice(i + 1).map((b): SurveyLine => {
      const onWood = a.onWood && b.onWood
      return {
        kind: 'crosses',
        words: `cross ${a.letter} to cross ${b.letter}${onWood ? '' : ' (on paper only)'}`,
        value: pointDistance(a.at, b.at),
        tolerance: tolerance(between(a.tile, b.tile)),
        onWood,
      }
    }),
  )
  const ends = pattern.points.map(({ at }) => tileAt(tiles, at).number)
  const joints = between(ends[0]!, ends.at(-1)!)
  // the middle of a random walk strays half as far from the straight between its ends; of three pages' turns the ends' count half
  // what cannot be measured on paper is not asked for
  const onPaper = pattern.points.every(({ at }) =>
    tiles.some(({ cell }) => convexContains(cell, at, -pointRoom)),
  )
  const curve = pattern.distances.flatMap(({ of, words, value, onWood }): readonly SurveyLine[] =>
    of === 'panel' || !onPaper
      ? []
      : [
          {
            kind: of,
            words,
            value,
            tolerance: of === 'chord' ? tolerance(joints) : tolerance(joints / 4, 3 / 4),
            onWood,
          },
        ],
  )
  return [...pairs.sort((a, b) => b.value - a.value), ...curve]
}

/** A survey is read finer than wood is cut: its tolerance belongs to the tenths of a mm, beside the inches too. */
export const surveyLength = (
  { value, tolerance }: Pick<SurveyLine, 'value' | 'tolerance'>,
  units: Units,
): string => {
  const fine = `${showLength(value, 'mm', { decimals: 1 })} ${showTolerance(tolerance)} mm`
  return units === 'mm' ? fine : `${showLength(value, units, { unit: true })} (${fine})`
}

/** The tile whose own part holds a point; the nearest one where none does. */
const tileAt = (tiles: readonly Tile[], p: Point): Tile => {
  const far = ({ cell }: Tile): number => pointDistance(pointBetween(cell[0]!, cell[2]!, 0.5), p)
  return (
    tiles.find((tile) => convexContains(tile.cell, p)) ??
    tiles.reduce((best, tile) => (far(best) <= far(tile) ? best : tile))
  )
}

/** Fewest joints on a way from page to page. */
const jointsBetween = (tiles: readonly Tile[]) => {
  const near = new Map(tiles.map((tile) => [tile.number, tile.joints.map((joint) => joint.neighbour)]))
  return (from: number, to: number): number => {
    let [ring, steps] = [[from], 0]
    const seen = new Set(ring)
    while (ring.length > 0 && !ring.includes(to)) {
      // each page once, however many ways lead to it
      ring = [...new Set(ring.flatMap((tile) => near.get(tile) ?? []))].filter((tile) => !seen.has(tile))
      for (const tile of ring) seen.add(tile)
      steps++
    }
    return steps
  }
}
