import { type Point, pointDistance } from '../../../geometry/point.ts'
import type { Pattern } from '../../../pattern/pattern.ts'
import { pairRadius } from '../pair-mark.ts'
import type { JointShares } from '../tile.ts'
import { crossShares } from './cross-shares.ts'
import { aroundOf, roomOf } from './joint-room.ts'
import { pairPlaces, pairShare } from './pair-shares.ts'
import type { MarkedLine } from './shares.ts'
import { vernierShares } from './vernier-shares.ts'

/**
 * Crosses near the ends of a joint line, verniers between them and its middle, near which a row's snap line crosses as a rule, the pair
 * mark beside that; each moved off the cut line, screws and edges of timbers where these lie; off edges only as far as that leaves room for
 * verniers. A joint too short for them has none.
 */
export const jointShares = (pattern: Pattern) => {
  const around = aroundOf(pattern)
  return (
    ends: readonly [Point, Point],
    snap: number | null,
    pages: readonly [number, number],
  ): JointShares => {
    const pairHalf = pairRadius(pages)
    const room = roomOf(around, ends, pairHalf)
    const line = { length: pointDistance(...ends), snaps: snap === null ? [] : [snap], pairHalf, room }
    const found = setOut(line)
    if (found.verniers.length > 1) return found
    const more = setOut({ ...line, room: { ...room, all: room.least } })
    const isBetter =
      more.verniers.length > found.verniers.length &&
      (!room.strikesSign(more.pair) || room.strikesSign(found.pair))
    return isBetter ? more : found
  }
}

const setOut = (line: MarkedLine): JointShares => {
  const crosses = crossShares(line)
  const pairs = pairPlaces(line, crosses)
  const verniers = vernierShares(line, pairs, crosses)
  return { crosses, ...pairShare(line, pairs, crosses, verniers) }
}
