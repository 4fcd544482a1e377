import { vernierReach } from '../vernier.ts'
import { enough } from './joint-room.ts'
import { isBetween, type PairPlaces, pairRoom } from './pair-shares.ts'
import { hair, isOff, type MarkedLine } from './shares.ts'

/** How far the middle of a vernier keeps from a cross, the snap line and another vernier, mm; of one that stands alone. */
const apart = { cross: 25, snap: 20, vernier: 2 * vernierReach + 3 }
const loneApart = { cross: vernierReach + 5.6, snap: vernierReach + 0.8 }

/** The usual middles of the verniers, shares; farther ones are tried in steps of so many mm, one alone in halves of that. */
const usual = [0.28, 0.72] as const
const step = 2

/** Verniers between the crosses and the middle, beside which a pair mark has room; one alone, or none, where there is too little. */
export const vernierShares = (
  line: MarkedLine,
  pairs: PairPlaces,
  crosses: readonly number[],
): readonly number[] => {
  const { strikes } = line.room
  const found = roomiestTwo(line, pairs, crosses)
  if (found.length > 0 && found.every((t) => !strikes(t))) return found
  // one that can be read is better than two that cannot
  const single = roomiestOne(line, pairs, crosses)
  return single === null ? found.filter((t) => !strikes(t)) : [single]
}

/** Where a vernier that stands alone can be read and has the most room, beside a pair mark too; none where it has not any. */
const roomiestOne = (line: MarkedLine, pairs: PairPlaces, crosses: readonly number[]): number | null => {
  const { length, snaps, room } = line
  const count = 2 * Math.floor(length / step)
  let best: number | null = null
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < count && most < enough; i++) {
    const t = (i + 0.5) / count
    if (!isBetween(t, crosses)) continue
    if (!isOff(length, t, crosses, loneApart.cross) || !isOff(length, t, snaps, loneApart.snap)) continue
    const own = room.all(t, vernierReach, most)
    if (own <= most || room.strikes(t)) continue
    const both = Math.min(own, pairRoom(line, pairs, t, t, own))
    if (both <= most) continue
    most = both
    best = t
  }
  return best
}

/** The two with the most room, a pair mark beside them too. */
const roomiestTwo = (line: MarkedLine, pairs: PairPlaces, crosses: readonly number[]): readonly number[] => {
  const { length, snaps, room } = line
  const hasRoom = (t: number): boolean =>
    isBetween(t, crosses) && isOff(length, t, crosses, apart.cross) && isOff(length, t, snaps, apart.snap)
  const isApart = (low: number, high: number): boolean => (high - low) * length >= apart.vernier
  // as a rule as good as any
  if (usual.every(hasRoom) && isApart(...usual)) {
    const own = Math.min(room.all(usual[0], vernierReach), room.all(usual[1], vernierReach))
    if (Math.min(own, pairRoom(line, pairs, ...usual, own)) >= enough - hair) return usual
  }
  const roomy: number[] = []
  for (let i = 0; i < Math.floor(length / step); i++)
    if (hasRoom(((i + 0.5) * step) / length)) roomy.push(((i + 0.5) * step) / length)
  const listed = (middle: number): readonly number[] => [
    ...[middle].filter(hasRoom),
    ...nearestFirst(roomy, middle),
  ]
  const upper = [...listed(usual[1])]
  // not known before they are asked for
  const rooms = upper.map(() => Number.NaN)
  let left = upper.length
  let most = Number.NEGATIVE_INFINITY
  let found: readonly number[] = []
  for (const low of listed(usual[0])) {
    if (most >= enough - hair) break
    const own = room.all(low, vernierReach, most + hair)
    if (own <= most + hair) continue
    // what has no more room than is found is not asked again
    let kept = 0
    for (let i = 0; i < left; i++) {
      if (rooms[i]! <= most + hair) continue
      upper[kept] = upper[i]!
      rooms[kept++] = rooms[i]!
    }
    left = kept
    for (let i = 0; i < left; i++) {
      const high = upper[i]!
      if (!isApart(low, high)) continue
      if (Number.isNaN(rooms[i])) rooms[i] = room.all(high, vernierReach, most + hair)
      const both = Math.min(own, rooms[i]!)
      if (both <= most + hair) continue
      const all = Math.min(both, pairRoom(line, pairs, low, high, both))
      if (all <= most + hair) continue
      most = all
      found = [low, high]
      if (most >= enough - hair) break
    }
  }
  return found
}

/** Rising numbers in the order of how near they lie to one; the lower one first of two that lie as near. */
const nearestFirst = (rising: readonly number[], middle: number): readonly number[] => {
  let above = rising.findIndex((t) => t >= middle)
  if (above < 0) above = rising.length
  const found: number[] = []
  for (let below = above - 1; found.length < rising.length; )
    if (above === rising.length || (below >= 0 && middle - rising[below]! <= rising[above]! - middle))
      found.push(rising[below--]!)
    else found.push(rising[above++]!)
  return found
}
