import { same } from '../check/offer.ts'
import type { Seat } from './seats.ts'

/** No piece is narrower up the ramp, nor one seam nearer to another of the next layer where a stud was set for it. mm */
export const leastPiece = 100

/** How far a sheet reaches up the ramp, and what is left between two, mm. */
export interface Reach {
  readonly most: number
  readonly gap: number
}

/** The flat length of a layer, how far its sheets reach, and where they may meet; its seats from the toe up. mm */
export interface Layer {
  readonly length: number
  readonly reach: Reach
  readonly seats: readonly Seat[]
}

/** Where two sheets meet; no seat where none is in reach. */
export interface Met {
  readonly at: number
  readonly seat: Seat | null
}

/** One way to lay a layer in sheets. */
interface Way {
  readonly seams: readonly Met[]
  /** its smallest piece, mm; without end where it is one sheet */
  readonly smallest: number
}

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

export const fewestPieces = ({ length, reach: { most, gap } }: Omit<Layer, 'seats'>): number =>
  Math.max(1, Math.ceil((length + gap - same) / (most + gap)))

/** Of ways to one seat no more than so many are looked at: those with the largest smallest piece. */
const kept = 6

/** All ways with so many pieces, every seam on a seat. */
const waysOf = ({ length, seats, reach: { most, gap } }: Layer, pieces: number): readonly Way[] => {
  let ways: readonly Way[] = [{ seams: [], smallest: Number.POSITIVE_INFINITY }]
  // of ways alike the one whose seams lie farther up
  const down = [...seats].reverse()
  for (let more = pieces - 1; more > 0; more--) {
    const next: Way[] = []
    for (const seat of down) {
      const { at } = seat
      // the sheets that are left must reach the end
      if (length - at < leastPiece - same || length - at > more * (most + gap) - gap / 2 + same) continue
      const here: { readonly way: Way; readonly smallest: number }[] = []
      for (const way of ways) {
        const before = way.seams.at(-1)?.at
        const piece = before === undefined ? at - gap / 2 : at - before - gap
        if (at - (before ?? 0) < leastPiece - same || piece > most + same) continue
        const last = more === 1 ? length - at - gap / 2 : piece
        here.push({ way, smallest: Math.min(way.smallest, piece, last) })
      }
      here.sort((a, b) => b.smallest - a.smallest)
      const met = { at, seat }
      for (const { way, smallest } of here.slice(0, kept)) next.push({ seams: [...way.seams, met], smallest })
    }
    ways = next
  }
  return ways
}

/** Where seats lack: the farthest in reach, else as far as a sheet goes. */
const anyWay = ({ length, seats, reach: { most, gap } }: Layer): Way => {
  const seams: Met[] = []
  let [from, smallest] = [0, Number.POSITIVE_INFINITY]
  while (length - from > most + same) {
    const reach = from + most + gap / 2
    const seat = seats.findLast(
      ({ at }) =>
        at >= (seams.at(-1)?.at ?? 0) + leastPiece - same &&
        at <= reach + same &&
        at <= length - leastPiece + same,
    )
    const at = seat?.at ?? Math.min(reach, Math.max(length - leastPiece, from + most / 2))
    smallest = Math.min(smallest, at - gap / 2 - from)
    seams.push({ at, seat: seat ?? null })
    from = at + gap / 2
  }
  return { seams, smallest: Math.min(smallest, seams.length > 0 ? length - from : smallest) }
}

/** What it costs to lie too near to a seam below, where a stud was set for one of the two: no choice is worth it. */
const tooNear = 1e6

/** Seams of a layer on studs that the one below has a seam on. */
const sharedWith = (below: Way, own: Way): number => {
  let shared = 0
  for (const { seat } of own.seams) {
    if (!seat) continue
    let again = false
    for (const { seat: other } of below.seams) {
      if (!other || Math.abs(other.up - seat.up) >= leastPiece + other.studs[0]!.width) continue
      if (other.studs.some((stud) => seat.studs.includes(stud))) again = true
      else if (
        Math.abs(other.up - seat.up) < leastPiece - same &&
        [...seat.studs, ...other.studs].some(({ role }) => role === 'seam')
      )
        return tooNear
    }
    if (again) shared++
  }
  return shared
}

/** Layers chosen so far: what they cost, the last of them, and those under it. */
interface Total {
  readonly lost: number
  readonly pieces: number
  readonly worth: number
  readonly way: Way | null
  readonly under: Total | null
}

const byRank = (a: Total, b: Total): number => a.lost - b.lost || a.pieces - b.pieces || b.worth - a.worth

/** The best of all layers together, from the one on the studs up; `joined`: what a way adds to their worth. */
const bestOf = (
  layers: readonly (readonly Way[])[],
  joined: (worth: number, way: Way) => number,
  start: number,
): Total => {
  let totals: Total[] = [{ lost: 0, pieces: 0, worth: start, way: null, under: null }]
  for (const ways of layers) {
    const before = totals.sort(byRank)
    totals = ways.map((way): Total => {
      let [best, least] = [before[0]!, Number.POSITIVE_INFINITY]
      for (const under of before) {
        if (under.lost > least) break
        const shared = under.way ? sharedWith(under.way, way) : 0
        const lost = under.lost + shared
        const alike = lost === least && (under.pieces - best.pieces || best.worth - under.worth) < 0
        if (lost < least || alike) {
          best = under
          least = lost
        }
        // none that follows is better
        if (shared === 0) break
      }
      return {
        lost: least + way.seams.reduce((sum, { seat }) => sum + (seat ? 0 : 1), 0),
        pieces: best.pieces + way.seams.length + 1,
        worth: joined(best.worth, way),
        way,
        under: best,
      }
    })
  }
  return totals.sort(byRank)[0]!
}

const chainOf = ({ way, under }: Total): readonly Way[] => (way && under ? [...chainOf(under), way] : [])

/** The first that differs is less. */
export const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const i = a.findIndex((value, k) => Math.abs(value - b[k]!) > same)
  return i >= 0 && a[i]! < b[i]!
}

/** What a neighbour takes may cost a piece or two more than the fewest. */
export const mostMore = 2

/** What is to be bettered, and of how many pieces more than the fewest a layer may be for it; fewer are known not to do. */
interface Than {
  readonly choice: Choice
  readonly more: number
}

/**
 * Where the sheets of all layers meet: the fewest seams lost, then the fewest pieces, then the largest smallest piece, then the largest
 * smallest pieces of the layers together. Null where that is not better `than` what is known.
 */
export const chooseSeams = (layers: readonly Layer[], than?: Than): Choice | null => {
  const fewest = layers.reduce((sum, layer) => sum + fewestPieces(layer), 0)
  let pool: readonly (readonly Way[])[] = layers.map((layer) => [anyWay(layer)])
  const most = than?.more ?? mostMore
  for (let more = 0; more <= most; more++) {
    pool = layers.map((layer, i) => [...waysOf(layer, fewestPieces(layer) + more), ...pool[i]!])
    if (than && more < most) continue
    const { lost, pieces, worth } = bestOf(
      pool,
      (least, { smallest }) => Math.min(least, smallest),
      Number.POSITIVE_INFINITY,
    )
    if (more < most && (lost > 0 || pieces > fewest)) continue
    if (than && !isBetter([lost, pieces], [than.choice.lost, than.choice.pieces])) return null
    // of those that keep to it
    const kept = pool.map((ways) => ways.filter(({ smallest }) => smallest >= worth - same))
    const whole = bestOf(kept, (sum, { smallest }) => sum + (Number.isFinite(smallest) ? smallest : 0), 0)
    return {
      layers: chainOf(whole).map(({ seams }) => seams),
      lost,
      pieces,
      smallest: worth,
      together: whole.worth,
    }
  }
  return null
}
