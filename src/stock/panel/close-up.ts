import { offerSteps, same } from '../../ramp/check/offer.ts'
import type { Place, Saw } from './pack.ts'

/**
 * Rectangles beyond all that is curved lie one saw cut off it, and row by row one off each other: a straight cut parts them, and
 * frees the edges on both of its sides. Rectangles that have the panel to themselves close up to the first row.
 */
export const closedUp = (places: readonly Place[], saw: ClosingSaw): readonly Place[] =>
  places.every(({ shape }) => !shape.square) ? places : closed(closed(places, 'y', saw), 'x', saw)

type ClosingSaw = Pick<Saw, 'kerf' | 'step'>

/** What figures tell of a tape in steps of so much: inches to half of them. */
const told = (step: number): number => (step === offerSteps.in ? step / 2 : step)

const closed = (places: readonly Place[], way: 'x' | 'y', { kerf, step }: ClosingSaw): readonly Place[] => {
  const end = (place: Place): number => place[way] + place.shape[way === 'x' ? 'width' : 'height']
  const last = (own: readonly Place[]): number => Math.max(...own.map(end))
  /** those that a straight cut parts from all others */
  let beyond = places.filter(({ shape }) => shape.square)
  let taken = 0
  for (let before = -1; before !== beyond.length; ) {
    before = beyond.length
    const others = places.filter((place) => !beyond.includes(place))
    // of rectangles alone the first row stays
    taken = others.length > 0 ? last(others) : Math.min(...beyond.map((place) => place[way])) - kerf
    const edge = taken + kerf - same
    beyond = beyond.filter((place) => place[way] >= edge)
  }
  const whole = told(step)
  const moved = new Map<Place, number>()
  let back = 0
  for (const place of beyond.toSorted((a, b) => a[way] - b[way])) {
    const at = place[way]
    // the first of a row: what comes behind keeps its distance from it
    if (at >= taken + kerf - same) back += Math.floor((at - taken - kerf) / whole + 1e-6) * whole
    moved.set(place, back)
    taken = Math.max(taken, end(place))
  }
  return places.map((place) => {
    const by = moved.get(place)
    return by ? { ...place, [way]: place[way] - by } : place
  })
}
