import { same } from '../check/offer.ts'
import type { LayerWays, Met, Way } from './seam-ways.ts'
import { leastPiece, type Seat } from './seats.ts'

/** What is chosen for all layers, and what it costs. */
export interface Choice {
  readonly layers: readonly (readonly Met[])[]
  /** seams without a seat, or on a stud that the layer below has a seam on */
  readonly lost: number
  readonly pieces: number
  /** the smallest piece of all layers of more than one sheet; then of each of them, together. mm */
  readonly smallest: number
  readonly together: number
}

/** What it costs to lie too near to a seam below, where a stud was set for one of the two: no choice is worth it. */
const tooNear = 1e6

/** What two seats of neighbouring layers cost where both have a seam; 1 on one stud. */
const clashOf = (below: Seat, own: Seat): number => {
  const apart = Math.abs(below.up - own.up)
  if (apart >= below.free) return 0
  if (below.studs.some((stud) => own.studs[0] === stud || own.studs[1] === stud)) return 1
  return apart < leastPiece - same && (below.set || own.set) ? tooNear : 0
}

/** Seams of a layer on studs that the one below has a seam on. */
export const sharedWith = (below: Way, own: Way): number => {
  let shared = 0
  for (const { seat } of own.seams) {
    if (!seat) continue
    let again = 0
    for (const { seat: other } of below.seams) {
      const clash = other ? clashOf(other, seat) : 0
      if (clash === tooNear) return tooNear
      again = Math.max(again, clash)
    }
    shared += again
  }
  return shared
}

/** Seams lost, then pieces. */
export interface Cost {
  readonly lost: number
  readonly pieces: number
}

const isWithin = (lost: number, pieces: number, limit: Cost): boolean =>
  lost < limit.lost || (lost === limit.lost && pieces <= limit.pieces)

const noLimit: Cost = { lost: Number.POSITIVE_INFINITY, pieces: Number.POSITIVE_INFINITY }

/** Layers chosen so far: what they cost, the last of them, and those under it. */
interface Total extends Cost {
  readonly worth: number
  readonly way: Way | null
  readonly under: Total | null
}

const byRank = (a: Total, b: Total): number => a.lost - b.lost || a.pieces - b.pieces || b.worth - a.worth

/** What ways add to the worth of layers together, from that of none. */
interface Worth {
  readonly start: number
  readonly joined: (worth: number, way: Way) => number
}

/** The best of all layers together, from the one on the studs up, that costs no more than the limit; null where none does. */
const bestOf = (
  layers: readonly LayerWays[],
  waysOf: (layer: LayerWays) => readonly Way[],
  { start, joined }: Worth,
  limit: Cost,
): Total | null => {
  let totals: Total[] = [{ lost: 0, pieces: 0, worth: start, way: null, under: null }]
  let rest = layers.reduce((sum, { fewest }) => sum + fewest, 0)
  for (const layer of layers) {
    // its ways are not asked for where none goes on
    if (totals.length === 0) return null
    rest -= layer.fewest
    const before = totals.sort(byRank)
    totals = []
    for (const way of waysOf(layer)) {
      const own = way.seams.length + 1
      let [best, least]: [Total | null, number] = [null, Number.POSITIVE_INFINITY]
      for (const under of before) {
        // none that follows is better, nor within the limit
        if (under.lost > least || !isWithin(under.lost + way.open, under.pieces + own + rest, limit)) break
        const shared = under.way ? sharedWith(under.way, way) : 0
        const lost = under.lost + shared
        if (isWithin(lost + way.open, under.pieces + own + rest, limit)) {
          const alike = best && lost === least && (under.pieces - best.pieces || best.worth - under.worth) < 0
          if (lost < least || alike) {
            best = under
            least = lost
          }
        }
        if (shared === 0) break
      }
      if (best)
        totals.push({
          lost: least + way.open,
          pieces: best.pieces + own,
          worth: joined(best.worth, way),
          way,
          under: best,
        })
    }
  }
  return totals.sort(byRank)[0] ?? null
}

const chainOf = ({ way, under }: Total): readonly Way[] => (way && under ? [...chainOf(under), way] : [])

/** The first that differs is less. */
export const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const i = a.findIndex((value, k) => Math.abs(value - b[k]!) > same)
  return i >= 0 && a[i]! < b[i]!
}

/** What a neighbour takes may cost a piece or two more than the fewest. */
const mostMore = 2

const smallestOfAll: Worth = {
  start: Number.POSITIVE_INFINITY,
  joined: (least, { smallest }) => Math.min(least, smallest),
}

const smallestTogether: Worth = {
  start: 0,
  joined: (sum, { smallest }) => sum + (Number.isFinite(smallest) ? smallest : 0),
}

/**
 * Where the sheets of all layers meet: the fewest seams lost, then the fewest pieces, then the largest smallest piece, then the largest
 * smallest pieces of the layers together. Null where that costs more than a limit.
 */
export const chooseSeams = (layers: readonly LayerWays[], limit = noLimit): Choice | null => {
  const fewest = layers.reduce((sum, layer) => sum + layer.fewest, 0)
  const few = chooseOf(layers, 0, limit)
  if (few && few.lost === 0 && few.pieces === fewest) return few
  // one piece more for a layer costs one more than the fewest as well, so two are tried at once
  return chooseOf(layers, mostMore, few ?? limit)
}

/** The same where a layer may have so many pieces more than its fewest, and no others do better than the limit. */
export const chooseOf = (layers: readonly LayerWays[], more: number, limit: Cost): Choice | null => {
  const best = bestOf(layers, ({ ways }) => ways(more), smallestOfAll, limit)
  if (!best) return null
  const { lost, pieces, worth } = best
  // of those that keep to it
  const keep = ({ ways }: LayerWays) => ways(more).filter(({ smallest }) => smallest >= worth - same)
  const whole = bestOf(layers, keep, smallestTogether, best)!
  return {
    layers: chainOf(whole).map(({ seams }) => seams),
    lost,
    pieces,
    smallest: worth,
    together: whole.worth,
  }
}

/** What costs less than that. */
export const under = ({ lost, pieces }: Cost): Cost => ({ lost, pieces: pieces - 1 })
