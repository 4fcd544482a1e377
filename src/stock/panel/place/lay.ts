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
  let best = null as Laid | null
  for (const shape of shapes) {
    const x = roomFor(shape.width, board.length, board.trim, shape.turn % 90 === 0)
    const y = roomFor(shape.height, board.width, board.trim, shape.turn % 90 === 0)
    // no place of it is nearer than its corner
    if (!x || !y || (best && !isNearer(shape, x[0], y[0], best, rule))) continue
    if (laid.length === 0) {
      best = { shape, x: x[0], y: y[0] }
      continue
    }
    // at most places the first that there can be is seen to be no better
    const across = (at: number): void => {
      if (best && !isNearer(shape, at, y[0], best, rule)) return
      const most = rule === 'rips' && best ? topOf(best) - shape.height + alike : y[1]
      const free = lowestFree(laid, shape, at, y[0], Math.min(y[1], most), 'rows')
      if (free !== null && (!best || isNearer(shape, at, free, best, rule))) best = { shape, x: at, y: free }
    }
    const along = (at: number): void => {
      if (best && !isNearer(shape, x[0], at, best, rule)) return
      const most = rule === 'ends' && best ? endOf(best) - shape.width + alike : x[1]
      const free = lowestFree(laid, shape, at, x[0], Math.min(x[1], most), 'columns')
      if (free !== null && (!best || isNearer(shape, free, at, best, rule))) best = { shape, x: free, y: at }
    }
    // of curved pieces the way that the rule asks for is enough
    const both = straight(laid, shape)
    const lefts = both || rule === 'rips' ? stationsOf(laid, shape, x, 'rows', both) : []
    for (let i = 0; i < lefts.length; i++) across(lefts[i]!)
    const lows = both || rule === 'ends' ? stationsOf(laid, shape, y, 'columns', both) : []
    for (let i = 0; i < lows.length; i++) along(lows[i]!)
    if (best?.shape !== shape || both) continue
    for (let step = stride / 2; step >= fineness; step /= 2)
      for (const by of [-step, step]) {
        const place: Laid = best
        if (rule === 'rips' && place.x + by >= x[0] && place.x + by <= x[1]) across(place.x + by)
        if (rule === 'ends' && place.y + by >= y[0] && place.y + by <= y[1]) along(place.y + by)
      }
  }
  return best
}

const straight = (laid: readonly Laid[], shape: Shape): boolean =>
  shape.square && laid.every((other) => other.shape.square)

/** Where a shape is tried along one way: at both ends, beside all that lies there, and in strides where something is curved. */
const stationsOf = (
  laid: readonly Laid[],
  shape: Shape,
  [from, to]: readonly [number, number],
  way: 'rows' | 'columns',
  allStraight: boolean,
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
  if (allStraight) return stations
  let apart = 8
  for (let first = 8; first >= 1; first /= 2) {
    for (let i = first; from + i * stride < to; i += apart) add(from + i * stride)
    apart = first
  }
  return stations
}

/** The lowest place from `from` to `to` at which the shape meets nothing, when its other place is `at`. */
const lowestFree = (
  laid: readonly Laid[],
  shape: Shape,
  at: number,
  from: number,
  to: number,
  way: 'rows' | 'columns',
): number | null => {
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

/** Whether a shape at a place lies nearer than what is the best: by the far edge along the one way, then along the other; then by the near ones. */
const isNearer = (shape: Shape, x: number, y: number, best: Laid, rule: Rule): boolean => {
  const right = x + shape.width - endOf(best)
  const top = y + shape.height - topOf(best)
  const ends = rule === 'ends'
  const first = ends ? right : top
  if (Math.abs(first) > alike) return first < 0
  const second = ends ? top : right
  if (Math.abs(second) > alike) return second < 0
  const third = ends ? x - best.x : y - best.y
  if (Math.abs(third) > alike) return third < 0
  return (ends ? y - best.y : x - best.x) < -alike
}
