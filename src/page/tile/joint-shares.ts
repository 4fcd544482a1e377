import { type Box, boxGrow, boxOverlaps, pointsBounds, segmentBounds } from '../../geometry/bounds.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { pathSegments, type Segment } from '../../geometry/path.ts'
import { type Point, pointBetween, pointCross, pointDistance, pointSubtract } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { pairRadius } from './pair-mark.ts'
import type { JointShares } from './tile.ts'
import { vernierReach } from './vernier.ts'

/** How far the middles of two marks keep apart along a joint, of a vernier and a cross, and of either and the snap line, mm. */
const apart = {
  vernierCross: 25,
  vernierSnap: 20,
  vernierVernier: 2 * vernierReach + 3,
  pairSnap: 8,
  /** of a vernier that stands alone */
  lone: { cross: vernierReach + 5.6, snap: vernierReach + 0.8 },
}

/** Half of a cross along its joint; air between it, or a vernier, and a pair mark, mm. */
const crossHalf = 5
const pairAir = 1

/** How far a mark reaches from its joint line, mm: most of it, and most marks. */
const markHeight = 5
const shortReach = 3.5

/** The usual middles of the verniers, shares; farther ones are tried in steps of so many mm. */
const usual = [0.28, 0.72] as const
const step = 2

/** A mark so near to a line that is sawn lies on it, which is worse than on anything else, mm. */
const onIt = 2

/** No more room than this makes a place better, mm. */
const enough = 8

/**
 * Crosses near the ends of a joint line, verniers between them and its middle, near which a row's snap line crosses as a rule, the pair
 * mark beside that; each moved off the cut line and the screws of timbers where these lie. A joint too short for
 * verniers has none.
 */
export const jointShares = (pattern: Pattern) => {
  const around = aroundOf(pattern)
  return (
    [a, b]: readonly [Point, Point],
    snap: number | null,
    pages: readonly [number, number],
  ): JointShares => {
    const length = pointDistance(a, b)
    const pairHalf = pairRadius(pages)
    const { clear, strikes } = clearOf(around, [a, b], Math.max(vernierReach, pairHalf))
    /** the share that keeps farthest from these; the first of equals */
    const best = (shares: readonly number[], reach: number): number =>
      shares
        .map((t) => ({ t, room: clear(t, reach) }))
        .reduce((kept, found) => (found.room > kept.room + 1e-6 ? found : kept)).t
    const off = (t: number, others: readonly number[], mm: number): boolean =>
      others.every((other) => Math.abs(t - other) * length >= mm)
    const snaps = snap === null ? [] : [snap]

    const crosses = [0, 1].map((end) => {
      const share = (t: number): number => Math.abs(end - t)
      const usualPlace = best([0.1, 0.14, 0.06].map(share), 4)
      return clear(usualPlace, 4) > crossHalf ? usualPlace : best([usualPlace, share(0.18), share(0.22)], 4)
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
    const besideVernier = (t: number, vernier: number): boolean =>
      Math.abs(t - vernier) * length >= vernierReach + pairHalf + pairAir
    /** the most room for a pair mark beside two verniers; no more than `wanted` is looked for */
    const pairRoom = (low: number, high: number, wanted: number): number => {
      let most = Number.NEGATIVE_INFINITY
      for (const t of pairPlaces) {
        if (!besideVernier(t, low) || !besideVernier(t, high)) continue
        const room = clear(t, pairHalf)
        if (room > most) most = room
        if (most >= wanted) break
      }
      return most
    }
    const places = Array.from({ length: Math.floor(length / step) }, (_, i) => ((i + 0.5) * step) / length)
    const hasRoom = (t: number): boolean =>
      isInner(t) && off(t, crosses, apart.vernierCross) && off(t, snaps, apart.vernierSnap)
    const roomy = places.filter(hasRoom)
    const verniersBy = (middle: number): readonly number[] => [
      ...[middle].filter(hasRoom),
      ...nearestFirst(roomy, middle),
    ]
    const verniers = ((): readonly number[] => {
      const [lower, upper] = usual.map(verniersBy) as [readonly number[], readonly number[]]
      let found: readonly number[] = []
      let most = Number.NEGATIVE_INFINITY
      for (const low of lower) {
        // as good as any
        if (most >= enough - 1e-6) break
        const lowRoom = clear(low, vernierReach)
        if (lowRoom <= most + 1e-6) continue
        for (const high of upper) {
          if ((high - low) * length < apart.vernierVernier) continue
          const both = Math.min(lowRoom, clear(high, vernierReach))
          if (both <= most + 1e-6) continue
          const room = Math.min(both, pairRoom(low, high, both))
          if (room <= most + 1e-6) continue
          most = room
          found = [low, high]
          if (most >= enough - 1e-6) break
        }
      }
      const hit = Math.max(0, ...found.map(strikes))
      if (hit === 0) return found
      // one that can be read is better than two that cannot
      const single = Array.from({ length: 2 * places.length }, (_, i) => (i + 0.5) / (2 * places.length))
        .filter((t) => isInner(t) && off(t, crosses, apart.lone.cross) && off(t, snaps, apart.lone.snap))
        .filter((t) => strikes(t) === 0)
        .map((t) => ({ t, room: Math.min(clear(t, vernierReach), pairRoom(t, t, enough)) }))
        .filter(({ room }) => room > Number.NEGATIVE_INFINITY)
        .sort((p, q) => q.room - p.room)[0]
      if (single) return [single.t]
      return hit === onLine ? [] : found
    })()
    const pairs = pairPlaces.filter((t) => verniers.every((vernier) => besideVernier(t, vernier)))
    return { crosses, verniers, pair: best(pairs.length > 0 ? pairs : pairShares, pairHalf) }
  }
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

/** What a scale lies on: the cut line, or no more than a screw. */
const [onLine, onScrew] = [2, 1] as const

/** How far a scale reaches from its joint line to both sides, with its figures about its middle, mm. */
const scaleHeight = (off: number): number => (Math.abs(off) > 11 ? 4.2 : 7)

/** Where an edge of a timber lies under a mark, and breaks off there, its room counts as so much less. */
const edgeShare = 0.5

interface Clear {
  /** room round the neighbourhood of `reach` mm of a share; asked once each */
  readonly clear: (t: number, reach: number) => number
  /** what a scale there would lie on, 0 where it lies on nothing */
  readonly strikes: (t: number) => number
}

/** What the joints of a pattern keep off. */
interface Around {
  readonly segments: readonly { readonly segment: Segment; readonly bounds: Box }[]
  readonly rounds: readonly { readonly at: Point; readonly radius: number }[]
  readonly edges: readonly (readonly [Point, Point])[]
}

const aroundOf = (pattern: Pattern): Around => {
  // joints between pieces of a side are sawn too; the short lines at the faces of timbers do not break off
  const sawn = pattern.marks.flatMap((mark) =>
    mark.kind === 'stroke' && !mark.path.closed ? pathSegments(mark.path) : [],
  )
  return {
    segments: [...pathSegments(pattern.outline), ...sawn].map((segment) => ({
      segment,
      bounds: segmentBounds(segment),
    })),
    rounds: [
      ...pattern.screws.flatMap(({ middles }) => middles.map((at) => ({ at, radius: screwRing }))),
      // a mark reaches from the joint line into the air round a named point
      ...pattern.points.map(({ at }) => ({ at, radius: pointRoom + markHeight - shortReach })),
    ],
    edges: pattern.markPaths.flatMap((path) =>
      pathSegments(path).map(({ from, to }): readonly [Point, Point] => [from, to]),
    ),
  }
}

/** A point as a joint line sees it, mm. */
interface Beside {
  readonly along: number
  readonly beside: number
}

/** How much of a straight line lies no farther from a joint line than so, along that; none or one. */
const stretchWithin = (
  from: Beside,
  to: Beside,
  reach: number,
): readonly { readonly low: number; readonly high: number }[] => {
  const rise = to.beside - from.beside
  const at = (beside: number): number => (beside - from.beside) / rise
  const [s0, s1] = Math.abs(rise) < 1e-9 ? [0, 1] : [at(-reach), at(reach)]
  const [first, last] = [Math.max(0, Math.min(s0, s1)), Math.min(1, Math.max(s0, s1))]
  if (first >= last || (Math.abs(rise) < 1e-9 && Math.abs(from.beside) > reach)) return []
  const [p, q] = [first, last].map((s) => from.along + s * (to.along - from.along)) as [number, number]
  return [{ low: Math.min(p, q), high: Math.max(p, q) }]
}

/** No reach is larger than `farthest`. */
const clearOf = (pattern: Around, [a, b]: readonly [Point, Point], farthest: number): Clear => {
  const length = pointDistance(a, b)
  const across = { x: (b.x - a.x) / length, y: (b.y - a.y) / length }
  // farther off than this nothing matters
  const beyond = enough + farthest
  const around = boxGrow(pointsBounds([a, b]), beyond)
  const middle = pointBetween(a, b, 0.5)
  const segments = pattern.segments
    .filter(
      ({ segment, bounds }) =>
        boxOverlaps(bounds, around) && segmentDistance(segment, middle) < length / 2 + beyond,
    )
    .map(({ segment }) => segment)
  const marks = pattern.rounds
    .map(({ at, radius }) => {
      const away = pointSubtract(at, a)
      return { along: away.x * across.x + away.y * across.y, beside: pointCross(across, away), radius }
    })
    .filter(({ beside, radius }) => Math.abs(beside) - radius < enough)
  const struck = pattern.edges.flatMap(([p, q]) => {
    const [from, to] = [p, q].map((end) => {
      const away = pointSubtract(end, a)
      return { along: away.x * across.x + away.y * across.y, beside: pointCross(across, away) }
    }) as [Beside, Beside]
    return stretchWithin(from, to, markHeight + 1.5)
  })
  const look = (t: number, reach: number): number => {
    const at = t * length
    const isStruck = struck.some(({ low, high }) => low < at + reach + 1 && high > at - reach - 1)
    const room = lookAround(t, reach)
    return isStruck && room > 0 ? room * edgeShare : room
  }
  const lookAround = (t: number, reach: number): number => {
    let room: number = enough
    // so near to each other that no line runs between two of them unseen
    const count = Math.ceil(reach / 3)
    for (let k = -count; k <= count && room > -enough && segments.length > 0; k++) {
      const at = pointBetween(a, b, t + (k * reach) / count / length)
      for (const segment of segments) {
        const off = segmentDistance(segment, at)
        room = Math.min(room, off < onIt ? -enough : off)
      }
    }
    for (const { along, beside, radius } of marks) {
      const off = Math.abs(along - t * length) - reach
      // what stands on the line reaches out to the mark
      room = Math.min(room, Math.hypot(Math.max(0, off), beside) - radius - shortReach)
    }
    return room
  }
  const known = new Map<number, Map<number, number>>()
  return {
    clear: (t, reach) => {
      const rooms = known.get(reach) ?? new Map<number, number>()
      known.set(reach, rooms)
      const room = rooms.get(t) ?? look(t, reach)
      rooms.set(t, room)
      return room
    },
    strikes: (t) => {
      for (let off = -vernierReach - 0.5; off <= vernierReach + 0.5; off += 1.5) {
        const at = pointBetween(a, b, t + off / length)
        if (segments.some((segment) => segmentDistance(segment, at) < scaleHeight(off))) return onLine
      }
      const isOn = marks.some(({ along, beside, radius }) => {
        const off = along - t * length
        return (
          Math.abs(off) < vernierReach + radius &&
          Math.abs(beside) - radius < scaleHeight(Math.abs(off) - radius)
        )
      })
      return isOn ? onScrew : 0
    },
  }
}
