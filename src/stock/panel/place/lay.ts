import { same } from '../../../ramp/check/offer.ts'
import { blocksAll, type Profile } from './profile.ts'
import type { Rise } from './rises.ts'
import type { Shape } from './shape.ts'

/** A panel as it lies: its long side along x, its short one along y; what is trimmed off each edge. mm */
export interface Board {
  readonly length: number
  readonly width: number
  readonly trim: number
}

/** A shape with its box's lower left corner at a place of the board. */
export interface Laid {
  readonly shape: Shape
  readonly x: number
  readonly y: number
}

/** What a place is chosen by: near the left end, so that the rest is one piece across; or near the lower edge. */
export type Rule = 'ends' | 'rips'

/** Steps in which a curved piece is tried along the board, mm; then halved down to the last one. */
const stride = 48
const fineness = 0.05
/** Places this near are the same, mm. */
const alike = 1e-6

/** Places from and to along one way of the board; a piece that lies level and fills it keeps the panel's own edges. */
export const roomFor = (
  size: number,
  length: number,
  trim: number,
  level: boolean,
): readonly [number, number] | null => {
  if (size <= length - 2 * trim + same) return [trim, Math.max(trim, length - trim - size)]
  return level && size <= length + same ? [0, 0] : null
}

/** The best place for one of the shapes among what lies on the board already, or null. */
export const layNext = (
  board: Board,
  laid: readonly Laid[],
  shapes: readonly Shape[],
  rule: Rule,
): Laid | null => {
  let best: Laid | null = null
  for (const shape of shapes) {
    const x = roomFor(shape.width, board.length, board.trim, shape.turn % 90 === 0)
    const y = roomFor(shape.height, board.width, board.trim, shape.turn % 90 === 0)
    if (!x || !y) continue
    /** whether the first place that there can be would be better */
    const hopeful = (from: Laid): boolean => !best || isNearer(from, best, rule)
    const across = (at: number): Laid | null => {
      if (!hopeful({ shape, x: at, y: y[0] })) return null
      const most = rule === 'rips' && best ? topOf(best) - shape.height + alike : y[1]
      const free = lowestFree(laid, shape, at, [y[0], Math.min(y[1], most)], 'rows')
      return free === null ? null : { shape, x: at, y: free }
    }
    const along = (at: number): Laid | null => {
      if (!hopeful({ shape, x: x[0], y: at })) return null
      const most = rule === 'ends' && best ? endOf(best) - shape.width + alike : x[1]
      const free = lowestFree(laid, shape, at, [x[0], Math.min(x[1], most)], 'columns')
      return free === null ? null : { shape, x: free, y: at }
    }
    // of curved pieces the way that the rule asks for is enough
    const both = straight(laid, shape)
    const lefts = both || rule === 'rips' ? stationsOf(laid, shape, x, 'rows') : []
    for (let i = 0; i < lefts.length; i++) best = nearer(best, across(lefts[i]!), rule)
    const lows = both || rule === 'ends' ? stationsOf(laid, shape, y, 'columns') : []
    for (let i = 0; i < lows.length; i++) best = nearer(best, along(lows[i]!), rule)
    if (best?.shape !== shape || both) continue
    for (let step = stride / 2; step >= fineness; step /= 2)
      for (const by of [-step, step]) {
        const place: Laid = best
        if (rule === 'rips' && place.x + by >= x[0] && place.x + by <= x[1])
          best = nearer(best, across(place.x + by), rule)!
        if (rule === 'ends' && place.y + by >= y[0] && place.y + by <= y[1])
          best = nearer(best, along(place.y + by), rule)!
      }
  }
  return best
}

const straight = (laid: readonly Laid[], shape: Shape): boolean =>
  laid.length === 0 || (shape.square && laid.every((other) => other.shape.square))

/** Where a shape is tried along one way: at both ends, beside all that lies there, and in strides where something is curved. */
const stationsOf = (
  laid: readonly Laid[],
  shape: Shape,
  [from, to]: readonly [number, number],
  way: 'rows' | 'columns',
): readonly number[] => {
  const size = way === 'rows' ? shape.width : shape.height
  const stations = to > from ? [from, to] : [from]
  const add = (at: number): void => {
    if (at >= from && at <= to && !stations.includes(at)) stations.push(at)
  }
  for (const other of laid) {
    const { stations: own } = other.shape.grown[way]()
    const at = way === 'rows' ? other.x : other.y
    add(at + own[own.length - 1]!)
    add(at + own[0]! - size)
  }
  // far apart first: once a good place is known, most others are seen to be worse at a glance
  if (!straight(laid, shape))
    for (let [first, apart] = [8, 8]; first >= 1; [first, apart] = [first / 2, first])
      for (let i = first; from + i * stride < to; i += apart) add(from + i * stride)
  return stations
}

/** The lowest place from `from` to `to` at which the shape meets nothing, when its other place is `at`. */
const lowestFree = (
  laid: readonly Laid[],
  shape: Shape,
  at: number,
  [from, to]: readonly [number, number],
  way: 'rows' | 'columns',
): number | null => {
  if (laid.length === 0) return from
  const rows = way === 'rows'
  const own: Profile = shape[way]()
  const size = rows ? shape.height : shape.width
  // most places: one that lies there blocks all of them; lists and destructuring cost more here than all that is reckoned
  for (let i = 0; i < laid.length; i++) {
    const other = laid[i]!
    const there = other.shape
    const cross = rows ? other.y : other.x
    const low = from - cross - 2 * same
    const high = to - cross + 2 * same
    if (low <= -there.kerf - size || high >= (rows ? there.height : there.width) + there.kerf) continue
    if (blocksAll(there.grown[way](), own, at - (rows ? other.x : other.y), low, high)) return null
  }
  /** of each that lies there, once its box is met */
  const blocks: (Rise | undefined)[] = []
  let free = from
  for (let moved = true; moved; ) {
    moved = false
    for (let i = 0; i < laid.length; i++) {
      const other = laid[i]!
      const there = other.shape
      const cross = rows ? other.y : other.x
      if (free <= cross - there.kerf - size) continue
      if (free >= cross + (rows ? there.height : there.width) + there.kerf) continue
      let block = blocks[i]
      if (block === undefined) {
        const dx = at - (rows ? other.x : other.y)
        block = there.grown.rise[way](own, dx, free - cross - 2 * same, to - cross + 2 * same)
        blocks[i] = block
      }
      if (block === null || free <= block[0] + cross + same || free >= block[1] + cross - same) continue
      free = block[1] + cross
      if (free > to + same) return null
      moved = true
    }
  }
  return free <= to + same ? free : null
}

const endOf = (laid: Laid): number => laid.x + laid.shape.width
const topOf = (laid: Laid): number => laid.y + laid.shape.height

const nearer = (best: Laid | null, next: Laid | null, rule: Rule): Laid | null =>
  next && (!best || isNearer(next, best, rule)) ? next : best

/** By the far edge along the one way, then along the other; then by the near ones. */
const isNearer = (a: Laid, b: Laid, rule: Rule): boolean => {
  const right = endOf(a) - endOf(b)
  const top = topOf(a) - topOf(b)
  const ends = rule === 'ends'
  const first = ends ? right : top
  if (Math.abs(first) > alike) return first < 0
  const second = ends ? top : right
  if (Math.abs(second) > alike) return second < 0
  const third = ends ? a.x - b.x : a.y - b.y
  if (Math.abs(third) > alike) return third < 0
  return (ends ? a.y - b.y : a.x - b.x) < -alike
}
