import { same } from '../check/offer.ts'
import type { Flank } from './flank.ts'

/** Where a thing that is pushed comes to lie, and what it meets there. */
export interface Touch<T> {
  /** how far right of its own place it stays, mm */
  readonly shift: number
  /** height of the place that is tight */
  readonly y: number
  /** the flank of the thing that touches, and what it touches */
  readonly own: number
  readonly meets: T
}

/** Heights at which a curved pair is looked at before the tightest is closed in on. */
const looks = 16

/** A flank that a thing from the right may come to lie against. */
export interface Obstacle<T> {
  readonly flank: Flank
  readonly of: T
  /** in the list as it was named */
  readonly place: number
  /** how far right it reaches, mm */
  readonly right: number
}

/** The flanks that face right, what reaches farthest first: the most that others can come to is then less, mostly. */
export const obstaclesOf = <T>(
  parts: readonly { readonly flank: Flank; readonly of: T }[],
): readonly Obstacle<T>[] =>
  parts
    .flatMap(({ flank, of }, place) =>
      flank.faces === 'right' ? [{ flank, of, place, right: spread(flank).most }] : [],
    )
    .sort((a, b) => b.right - a.right)

/**
 * How far something that comes from the right on the floor can be pushed to the left. Two outlines overlap at a height for
 * shifts up to the right edge of the one less the left edge of the other: the largest of all heights is where it stops. Null
 * where nothing is in its way.
 */
export const pushedTo = <T>(thing: readonly Flank[], obstacles: readonly Obstacle<T>[]): Touch<T> | null => {
  let best: (Touch<T> & { readonly place: number }) | null = null
  const own = thing
    .flatMap((flank, i) => (flank.faces === 'left' ? [{ flank, i, least: spread(flank).least }] : []))
    .sort((a, b) => a.least - b.least)
  /** what it stays at the least, by the ends of what they share: most pairs come to no more at any height */
  let least = Number.NEGATIVE_INFINITY
  const pairs = []
  for (const other of obstacles)
    for (const mine of own) {
      // nor does what comes after reach any farther
      if (other.right - mine.least < least - same) break
      const low = Math.max(other.flank.low, mine.flank.low)
      const high = Math.min(other.flank.high, mine.flank.high)
      // level with its top is past it
      if (high - low <= same) continue
      const gap = (y: number): number => other.flank.at(y) - mine.flank.at(y)
      const atEnds = Math.max(gap(low), gap(high))
      if (atEnds > least) least = atEnds
      const straight = other.flank.straight && mine.flank.straight
      // two straight ones come to no more than at their ends
      if (!straight || atEnds >= least - same) pairs.push({ other, mine, low, high, gap, straight, atEnds })
    }
  for (const { other, mine, low, high, gap, straight, atEnds } of pairs) {
    const { flank, of, place } = other
    /** whether what lies between two heights can come to the best */
    const hopeful = (from: number, to: number): boolean =>
      between(flank, from, to).most - between(mine.flank, from, to).least >= least - same
    if (straight ? atEnds < least - same : !hopeful(low, high)) continue
    const y = tightest(gap, low, high, straight, hopeful)
    if (y === null) continue
    const shift = gap(y)
    // of those that touch alike the one that was named first
    const first = !best || (place - best.place || mine.i - best.own) < 0
    if (!best || shift > best.shift || (shift === best.shift && first))
      best = { shift, y, own: mine.i, meets: of, place }
    least = Math.max(least, shift)
  }
  return best
}

interface Spread {
  readonly least: number
  readonly most: number
}

/** Between which x a rising stretch lies: at its ends, or where a circle is widest. */
const spread = (flank: Flank): Spread => between(flank, flank.low, flank.high)

/** The same of its part between two heights. */
const between = (flank: Flank, low: number, high: number): Spread => {
  const [a, b] = [flank.at(low), flank.at(high)]
  if (flank.straight) return a < b ? { least: a, most: b } : { least: b, most: a }
  const widest = flank.at(Math.min(high, Math.max(low, (flank.low + flank.high) / 2)))
  return { least: Math.min(a, b, widest), most: Math.max(a, b, widest) }
}

/** Where a smooth function is largest, to the last bits: looked for all over, then by golden sections about the best; null where that is not hopeful. */
const tightest = (
  f: (y: number) => number,
  low: number,
  high: number,
  straight: boolean,
  hopeful: (from: number, to: number) => boolean,
): number | null => {
  if (straight) return f(low) > f(high) ? low : high
  const step = (high - low) / looks
  let best = 0
  let most = f(low)
  for (let i = 1; i <= looks; i++) {
    const gap = f(low + i * step)
    if (gap > most) [best, most] = [i, gap]
  }
  let [a, b] = [Math.max(low, low + (best - 1) * step), Math.min(high, low + (best + 1) * step)]
  if (!hopeful(a, b)) return null
  const golden = (Math.sqrt(5) - 1) / 2
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)]
  let [atC, atD] = [f(c), f(d)]
  while (b - a > 1e-7) {
    if (atC > atD) {
      ;[b, d, atD] = [d, c, atC]
      c = b - golden * (b - a)
      atC = f(c)
    } else {
      ;[a, c, atC] = [c, d, atD]
      d = a + golden * (b - a)
      atD = f(d)
    }
  }
  return [low + best * step, (a + b) / 2].reduce((y, other) => (f(other) > f(y) ? other : y))
}
