import { same } from '../check/offer.ts'
import { leastPiece, type Seat } from './seats.ts'

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
export interface Way {
  readonly seams: readonly Met[]
  /** where the last of them lies, 0 without any */
  readonly last: number
  /** how many of them have no seat */
  readonly open: number
  /** its smallest piece, mm; without end where it is one sheet */
  readonly smallest: number
}

/** A layer and the ways to lay it that are looked at: in so many pieces more than the fewest, those of fewer behind. */
export interface LayerWays extends Layer {
  readonly fewest: number
  readonly ways: (more: number) => readonly Way[]
}

export const fewestPieces = ({ length, reach: { most, gap } }: Omit<Layer, 'seats'>): number =>
  Math.max(1, Math.ceil((length + gap - same) / (most + gap)))

/** Of ways to one seat no more than so many are looked at: those with the largest smallest piece. */
const kept = 6

/** All ways with so many pieces, every seam on a seat. */
const waysIn = ({ length, seats, reach: { most, gap } }: Layer, pieces: number): readonly Way[] => {
  let ways: readonly Way[] = [{ seams: [], last: 0, open: 0, smallest: Number.POSITIVE_INFINITY }]
  for (let more = pieces - 1; more > 0; more--) {
    const next: Way[] = []
    // of ways alike the one whose seams lie farther up
    for (let i = seats.length - 1; i >= 0; i--) {
      const seat = seats[i]!
      const { at } = seat
      // the sheets that are left must reach the end
      if (length - at < leastPiece - same || length - at > more * (most + gap) - gap / 2 + same) continue
      const here: { readonly way: Way; readonly smallest: number }[] = []
      for (const way of ways) {
        const piece = way.seams.length === 0 ? at - gap / 2 : at - way.last - gap
        if (at - way.last < leastPiece - same || piece > most + same) continue
        const last = more === 1 ? length - at - gap / 2 : piece
        const smallest = Math.min(way.smallest, piece, last)
        // behind those that are as good
        let place = here.length
        while (place > 0 && here[place - 1]!.smallest < smallest) place--
        if (place === kept) continue
        here.splice(place, 0, { way, smallest })
        if (here.length > kept) here.pop()
      }
      const met = { at, seat }
      for (const { way, smallest } of here)
        next.push({ seams: [...way.seams, met], last: at, open: 0, smallest })
    }
    ways = next
  }
  return ways
}

/** Where seats lack: the farthest in reach, else as far as a sheet goes. */
const anyWay = ({ length, seats, reach: { most, gap } }: Layer): Way => {
  const seams: Met[] = []
  let [from, last, open, smallest] = [0, 0, 0, Number.POSITIVE_INFINITY]
  while (length - from > most + same) {
    const reach = from + most + gap / 2
    const least = last + leastPiece - same
    const farthest = Math.min(reach, length - leastPiece) + same
    let i = seats.length - 1
    while (i >= 0 && seats[i]!.at > farthest) i--
    const seat = i >= 0 && seats[i]!.at >= least ? seats[i]! : null
    const at = seat?.at ?? Math.min(reach, Math.max(length - leastPiece, from + most / 2))
    smallest = Math.min(smallest, at - gap / 2 - from)
    seams.push({ at, seat })
    last = at
    if (!seat) open++
    from = at + gap / 2
  }
  return { seams, last, open, smallest: Math.min(smallest, seams.length > 0 ? length - from : smallest) }
}

export const layerWays = (layer: Layer): LayerWays => {
  const fewest = fewestPieces(layer)
  const known: (readonly Way[])[] = []
  const ways = (more: number): readonly Way[] => {
    known[more] ??= [...waysIn(layer, fewest + more), ...(more === 0 ? [anyWay(layer)] : ways(more - 1))]
    return known[more]
  }
  return { ...layer, fewest, ways }
}

/**
 * The ways of a layer on more seats: those `before` where no new seat serves any in so few pieces, as most do not of the many places
 * that a stud might be set at.
 */
export const waysBeside = (before: LayerWays, seats: readonly Seat[], more: number): LayerWays => {
  const layer = { length: before.length, reach: before.reach, seats }
  return serves(before, layer, before.fewest + more) ? layerWays(layer) : before
}

/** Whether other seats may bring another way in so many pieces at most. */
const serves = (before: LayerWays, layer: Layer, pieces: number): boolean => {
  const { seats } = layer
  const fresh = freshIn(before.seats, seats)
  if (fresh === null) return true
  if (fresh.length === 0) return false
  const up = stepsTo(
    seats.map(({ at }) => at),
    layer.reach,
  )
  const down = stepsTo(seats.map(({ at }) => layer.length - at).reverse(), layer.reach)
  if (fresh.some((i) => up[i]! + down[seats.length - 1 - i]! <= pieces)) return true
  const [own, other] = [before.ways(0).at(-1)!, anyWay(layer)]
  return (
    other.seams.length !== own.seams.length ||
    other.seams.some(({ at, seat }, i) => at !== own.seams[i]!.at || seat !== own.seams[i]!.seat)
  )
}

/** Which of some seats are not among those before; null where one of these is gone. */
const freshIn = (before: readonly Seat[], seats: readonly Seat[]): readonly number[] | null => {
  const fresh: number[] = []
  let old = 0
  for (const [i, seat] of seats.entries())
    if (seat === before[old]) old++
    else fresh.push(i)
  return old === before.length ? fresh : null
}

/** The fewest pieces from an end of a layer to each of its seats, by how far these lie from it; without end where none lead there. */
const stepsTo = (seats: readonly number[], { most, gap }: Reach): readonly number[] => {
  const steps: number[] = []
  for (let i = 0; i < seats.length; i++) {
    const at = seats[i]!
    let least = at >= leastPiece - same && at - gap / 2 <= most + same ? 1 : Number.POSITIVE_INFINITY
    for (let j = i - 1; j >= 0; j--) {
      const apart = at - seats[j]!
      if (apart - gap > most + same) break
      if (apart >= leastPiece - same) least = Math.min(least, steps[j]! + 1)
    }
    steps.push(least)
  }
  return steps
}
