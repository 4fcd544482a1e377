import { pathDistance } from '../../geometry/nearest.ts'
import { type Point, pointBetween, pointCross, pointDistance, pointSubtract } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing, timberSign } from '../../pattern/timber-marks.ts'
import type { JointShares } from './tile.ts'
import { vernierReach } from './vernier.ts'

/** Room round the middle of a vernier and of a cross along the joint, mm. */
const room = { vernier: vernierReach + 7, cross: 7 }

/** From the middle of a pair mark to the snap line, mm. */
const pairRoom = 8

/** Half of a pair mark along its joint, mm. */
const pairHalf = 5

/**
 * Crosses near the ends of a joint line, verniers between them and its middle, near which a row's snap line crosses, the pair
 * mark beside that; each moved off the cut line, the screws and the signs of timbers where these lie. A joint too short for
 * verniers has none.
 */
export const jointShares =
  (pattern: Pattern) =>
  ([a, b]: readonly [Point, Point], snap: number | null): JointShares => {
    const length = pointDistance(a, b)
    const across = { x: (b.x - a.x) / length, y: (b.y - a.y) / length }
    const signs = pattern.screws.flatMap(({ middles, sign }) => [
      ...middles.map((at) => ({ at, radius: screwRing })),
      { at: sign, radius: timberSign },
    ])
    /** the share whose neighbourhood of `reach` mm on the line keeps farthest from these; the first of equals */
    const best = (shares: readonly number[], reach: number): number => {
      const clear = (t: number): number =>
        Math.min(
          8,
          ...[-1, 0, 1].map((side) =>
            pathDistance(pattern.outline, pointBetween(a, b, t + (side * reach) / length)),
          ),
          ...signs.map(({ at, radius }) => {
            const off = pointSubtract(at, a)
            const along = Math.abs(off.x * across.x + off.y * across.y - t * length) - reach
            return Math.hypot(Math.max(0, along), pointCross(across, off)) - radius
          }),
        )
      return shares
        .map((t) => ({ t, room: clear(t) }))
        .reduce((kept, found) => (found.room > kept.room + 1e-6 ? found : kept)).t
    }
    const crosses = [best([0.1, 0.14, 0.06], 4), best([0.9, 0.86, 0.94], 4)]
    const fits = length * 0.2 >= room.vernier + room.cross - 4
    const verniers = fits
      ? [best([0.28, 0.3, 0.26], vernierReach), best([0.72, 0.7, 0.74], vernierReach)]
      : []
    const off = (t: number, others: readonly number[], mm: number): boolean =>
      others.every((other) => Math.abs(t - other) * length >= mm)
    // near the middle, else wherever the other marks leave room
    const pairs = [0.43, 0.57, 0.45, 0.55, 0.48, 0.52, 0.41, 0.59]
    const farther = Array.from({ length: 94 }, (_, i) => 0.5 + (i % 2 === 0 ? 1 : -1) * ((i + 1) / 200))
    const beside = [...pairs, ...farther].filter(
      (t) =>
        off(t, verniers, vernierReach + pairHalf) &&
        off(t, crosses, room.cross + pairHalf) &&
        (snap === null || off(t, [snap], pairRoom)),
    )
    return { crosses, verniers, pair: best(beside.length > 0 ? beside : pairs, 5) }
  }
