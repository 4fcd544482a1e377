import { type Point, pointDistance } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { aroundOf, enough, type Room, roomOf } from './joint-room.ts'
import { pairRadius } from './pair-mark.ts'
import type { JointShares } from './tile.ts'
import { vernierReach } from './vernier.ts'

/** How far the middles of two marks keep apart along a joint, of a vernier and a cross, and of either and the snap line, mm. */
const apart = {
  vernierCross: 25,
  vernierSnap: 20,
  crossSnap: 10.5,
  vernierVernier: 2 * vernierReach + 3,
  pairSnap: 8,
  /** of a vernier that stands alone */
  lone: { cross: vernierReach + 5.6, snap: vernierReach + 0.8 },
}

/** Half of a cross along its joint; air between it, or a vernier, and a pair mark, mm. */
const crossHalf = 5
const pairAir = 1

/** The usual middles of the verniers, shares; farther ones are tried in steps of so many mm. */
const usual = [0.28, 0.72] as const
const step = 2

/** Where a cross is tried where all places near its end lie on a line, shares from that end. */
const far = [0.26, 0.3, 0.34, 0.38, 0.03]
/** A line nearer to the middle of a cross runs through its arms, mm. */
const crossRoom = 4.3

/**
 * Crosses near the ends of a joint line, verniers between them and its middle, near which a row's snap line crosses as a rule, the pair
 * mark beside that; each moved off the cut line, screws and edges of timbers where these lie; off edges only as far as that leaves room for
 * verniers. A joint too short for them has none.
 */
export const jointShares = (pattern: Pattern) => {
  const around = aroundOf(pattern)
  return (
    line: readonly [Point, Point],
    snap: number | null,
    pages: readonly [number, number],
  ): JointShares => {
    const joint = { length: pointDistance(...line), snap, pairHalf: pairRadius(pages) }
    const { all, least, strikes, strikesSign, onBand } = roomOf(around, line, joint.pairHalf)
    const struck = once(strikesSign)
    const grey = once(onBand)
    const found = setOut(joint, all, least, strikes, struck, grey)
    if (found.verniers.length > 1) return found
    const more = setOut(joint, least, least, strikes, struck, grey)
    const isBetter =
      more.verniers.length > found.verniers.length && (!struck(more.pair) || struck(found.pair))
    return isBetter ? more : found
  }
}

/** Asked once of each share. */
const once = (ask: (t: number) => boolean): ((t: number) => boolean) => {
  const found = new Map<number, boolean>()
  return (t) => {
    let is = found.get(t)
    if (is === undefined) {
      is = ask(t)
      found.set(t, is)
    }
    return is
  }
}

const setOut = (
  {
    length,
    snap,
    pairHalf,
  }: { readonly length: number; readonly snap: number | null; readonly pairHalf: number },
  clear: Room,
  least: Room,
  strikes: (t: number) => boolean,
  struck: (t: number) => boolean,
  grey: (t: number) => boolean,
): JointShares => {
  /** of those that are free the share that keeps farthest from these; the first of equals, as none has more than enough */
  const bestOf = (
    shares: readonly number[],
    reach: number,
    isFree: (t: number) => boolean,
  ): number | undefined => {
    let kept: number | undefined
    let most = Number.NEGATIVE_INFINITY
    for (const t of shares) {
      if (most >= enough - 1e-6) break
      if (!isFree(t)) continue
      const room = clear(t, reach, most + 1e-6)
      if (kept !== undefined && room <= most + 1e-6) continue
      kept = t
      most = room
    }
    return kept
  }
  const best = (shares: readonly number[], reach: number): number => bestOf(shares, reach, () => true)!
  const off = (t: number, others: readonly number[], mm: number): boolean => {
    for (let i = 0; i < others.length; i++) if (Math.abs(t - others[i]!) * length < mm) return false
    return true
  }
  const snaps = snap === null ? [] : [snap]

  const crosses = [0, 1].map((end) => {
    const share = (t: number): number => Math.abs(end - t)
    const shares = [0.1, 0.14, 0.06, 0.18, 0.22].map(share)
    const usualShares = shares.slice(0, 3).filter((t) => off(t, snaps, apart.crossSnap))
    const usualPlace = usualShares.length > 0 ? best(usualShares, 4) : null
    if (usualPlace !== null && least(usualPlace, 4) > crossHalf && clear(usualPlace, 4) > 0) return usualPlace
    const others = [...usualShares, ...shares.slice(3).filter((t) => off(t, snaps, apart.crossSnap))]
    const found = best(others.length > 0 ? others : shares, 4)
    if (least(found, 0.1) > crossRoom && clear(found, 4) > 0) return found
    // far from the end rather than on a line
    return best([found, ...far.map(share).filter((t) => off(t, snaps, apart.crossSnap))], 4)
  })
  // beyond the crosses lie marks of other joints, and the page's edges
  const isInner = (t: number): boolean => t > crosses[0]! && t < crosses[1]!
  // near the middle, else wherever the other marks leave room
  const pairPlaces = pairShares.filter(
    (t) =>
      isInner(t) &&
      off(t, crosses, crossHalf + pairHalf + pairAir) &&
      off(t, snaps, Math.max(apart.pairSnap, pairHalf + pairAir + 2)),
  )
  const allGrey = pairPlaces.every(grey)
  const besideVernier = (t: number, vernier: number): boolean =>
    Math.abs(t - vernier) * length >= vernierReach + pairHalf + pairAir
  /** the most room for a pair mark beside two verniers; no more than `wanted` is looked for */
  const pairRoom = (low: number, high: number, wanted: number): number => {
    let most = Number.NEGATIVE_INFINITY
    for (const t of pairPlaces) {
      if (!besideVernier(t, low) || !besideVernier(t, high)) continue
      // on the grey it would hide which side is waste
      const room = grey(t) && !allGrey ? -enough : clear(t, pairHalf, most)
      if (room > most) most = room
      if (most >= wanted) break
    }
    return most
  }
  const count = Math.floor(length / step)
  const hasRoom = (t: number): boolean =>
    isInner(t) && off(t, crosses, apart.vernierCross) && off(t, snaps, apart.vernierSnap)
  /** where a vernier that stands alone can be read and has the most room, beside a pair mark too; none where it has not any */
  const roomiest = (): number | null => {
    let best: number | null = null
    let most = Number.NEGATIVE_INFINITY
    for (let i = 0; i < 2 * count && most < enough; i++) {
      const t = (i + 0.5) / (2 * count)
      if (!isInner(t) || !off(t, crosses, apart.lone.cross) || !off(t, snaps, apart.lone.snap)) continue
      const own = clear(t, vernierReach, most)
      if (own <= most || strikes(t)) continue
      const room = Math.min(own, pairRoom(t, t, own))
      if (room > most) {
        most = room
        best = t
      }
    }
    return best
  }
  const isApart = (low: number, high: number): boolean => (high - low) * length >= apart.vernierVernier
  const roomOfBoth = (low: number, high: number): number =>
    Math.min(clear(low, vernierReach), clear(high, vernierReach))
  const roomiestBoth = (): readonly number[] => {
    let most = Number.NEGATIVE_INFINITY
    // as a rule as good as any
    if (usual.every(hasRoom) && isApart(...usual)) {
      const both = roomOfBoth(...usual)
      if (Math.min(both, pairRoom(...usual, both)) >= enough - 1e-6) return usual
    }
    const roomy: number[] = []
    for (let i = 0; i < count; i++)
      if (hasRoom(((i + 0.5) * step) / length)) roomy.push(((i + 0.5) * step) / length)
    const listed = (middle: number): readonly number[] => [
      ...[middle].filter(hasRoom),
      ...nearestFirst(roomy, middle),
    ]
    const upper = [...listed(usual[1])]
    // not known before they are asked for
    const rooms = upper.map(() => Number.NaN)
    let left = upper.length
    let found: readonly number[] = []
    for (const low of listed(usual[0])) {
      if (most >= enough - 1e-6) break
      const own = clear(low, vernierReach, most + 1e-6)
      if (own <= most + 1e-6) continue
      // what has no more room than is found is not asked again
      let kept = 0
      for (let i = 0; i < left; i++) {
        if (rooms[i]! <= most + 1e-6) continue
        upper[kept] = upper[i]!
        rooms[kept++] = rooms[i]!
      }
      left = kept
      for (let i = 0; i < left; i++) {
        const high = upper[i]!
        if (!isApart(low, high)) continue
        if (Number.isNaN(rooms[i])) rooms[i] = clear(high, vernierReach, most + 1e-6)
        const both = Math.min(own, rooms[i]!)
        if (both <= most + 1e-6) continue
        const room = Math.min(both, pairRoom(low, high, both))
        if (room <= most + 1e-6) continue
        most = room
        found = [low, high]
        if (most >= enough - 1e-6) break
      }
    }
    return found
  }
  const verniers = ((): readonly number[] => {
    const found = roomiestBoth()
    if (found.length > 0 && found.every((t) => !strikes(t))) return found
    // one that can be read is better than two that cannot
    const single = roomiest()
    return single === null ? found.filter((t) => !strikes(t)) : [single]
  })()
  const isBesideAll = (t: number, scales: readonly number[]): boolean =>
    off(t, scales, vernierReach + pairHalf + pairAir)
  const pairBeside = (scales: readonly number[]): number => {
    const isOffCrosses = (t: number): boolean => off(t, crosses, crossHalf + pairHalf + pairAir)
    for (const isFree of [
      (t: number): boolean => !struck(t) && !grey(t),
      (t: number): boolean => !struck(t),
    ]) {
      // on the snap line rather than on a screw
      const free =
        bestOf(pairPlaces, pairHalf, (t) => isBesideAll(t, scales) && isFree(t)) ??
        bestOf(pairShares, pairHalf, (t) => isOffCrosses(t) && isBesideAll(t, scales) && isFree(t))
      if (free !== undefined) return free
    }
    return bestOf(pairPlaces, pairHalf, (t) => isBesideAll(t, scales)) ?? best(pairShares, pairHalf)
  }
  const usualPair = pairBeside(verniers)
  // a sign on a screw, on the line or on a snap line is worse than a scale less
  const isMarred = (t: number): boolean => struck(t) || !off(t, snaps, pairHalf + pairAir)
  if (isMarred(usualPair) && verniers.length > 1)
    for (const scale of verniers) {
      const pair = pairBeside([scale])
      if (!isMarred(pair)) return { crosses, verniers: [scale], pair }
    }
  return { crosses, verniers, pair: usualPair }
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

const pairShares = [
  ...[0.43, 0.57, 0.45, 0.55, 0.48, 0.52, 0.41, 0.59],
  ...Array.from({ length: 94 }, (_, i) => 0.5 + (i % 2 === 0 ? 1 : -1) * ((i + 1) / 200)),
]
