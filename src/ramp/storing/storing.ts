import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { same } from '../check/offer.ts'
import { timberCorners } from '../frame/timber.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import { bodyFlanks, isWhole, type Part, type PartFlank, shelterFlanks } from './body.ts'
import { type Flank, raised, turnedRound, upsideDown } from './flank.ts'
import { pushedTo } from './slide.ts'

/** How a ramp lies when it is pushed in from the back of the other. */
export const ways = ['toe-first', 'back-first', 'toe-first upside-down', 'back-first upside-down'] as const
export type Way = (typeof ways)[number]

/** One way in, level on the floor. Lengths mm. */
export interface Slid {
  readonly way: Way
  /** how much of it comes to lie inside, of its whole length */
  readonly depth: number
  /** how far it stands out at the back; 0 or less where it does not */
  readonly out: number
  /** from the other's front to its own foremost point */
  readonly front: number
  /** the place that is tight, seen from the other's front bottom corner; null where nothing is in the way */
  readonly tight: { readonly x: number; readonly y: number; readonly part: Part; readonly meets: Part } | null
}

/** The room that a ramp takes as it stands, seen from the side: skin, board and pipe in it. */
export const standingBox = (ramp: SolvedQuarter): Box => {
  const ends = bodyFlanks(ramp).flatMap(({ flank: { low, high, at } }) =>
    [low, (low + high) / 2, high].map((y) => ({ x: at(y), y })),
  )
  return pointsBounds([...ends, { x: 0, y: 0 }, { x: ramp.length, y: 0 }])
}

const posed = (body: readonly PartFlank[], way: Way, top: number): readonly PartFlank[] => {
  const turn = way.startsWith('back-first') ? turnedRound : (flank: Flank): Flank => flank
  const flip = way.endsWith('upside-down')
    ? (flank: Flank): Flank => upsideDown(flank, top)
    : (flank: Flank): Flank => flank
  return body.map(({ flank, of }) => ({ flank: flip(turn(flank)), of }))
}

/**
 * How far a ramp goes into another, in a given way and so far above the floor. What stands on the floor at the other's back
 * counts only if told so.
 */
export const slideIn = (
  ramp: SolvedQuarter,
  outer: SolvedQuarter,
  way: Way,
  above = 0,
  overLow = true,
): Slid => {
  const { y1: top, x0, x1 } = standingBox(ramp)
  const body = posed(bodyFlanks(ramp), way, top).map(({ flank, of }) => ({ flank: raised(flank, above), of }))
  const { over, low } = shelterFlanks(outer)
  const touch = pushedTo(
    body.map(({ flank }) => flank),
    overLow ? over : [...over, ...low],
  )
  const long = x1 - x0
  const least = way.startsWith('back-first') ? -x1 : x0
  // toe at the other's toe, or back at its front, is far enough
  const free = way.startsWith('back-first') ? x1 : 0
  const shift = touch && touch.shift > free ? touch.shift : free
  const front = shift + least
  const out = front + long - outer.length
  return {
    way,
    depth: Math.min(long, Math.max(0, outer.length - front)),
    out,
    front,
    tight:
      touch && touch.shift > free - same
        ? {
            x: shift + body[touch.own]!.flank.at(touch.y),
            y: touch.y,
            part: body[touch.own]!.of,
            meets: touch.meets,
          }
        : null,
  }
}

/** What to do about a timber on the floor at the other's back. */
export type LowTimber = 'none' | 'lift over' | 'leave out or raise' | 'leave out'

/** How one ramp is kept in another. */
export interface Storing {
  readonly ramp: string
  readonly outer: string
  /** every way, the toe first; none where ribs shut it out */
  readonly slid: readonly Slid[]
  readonly low: { readonly timber: LowTimber; readonly height: number }
  /** length, width and height of the two as they are stored, the best way in; null where it does not go in at all */
  readonly stored: readonly [number, number, number] | null
}

/** Null where one of the two could not be solved. */
export const solveStoring = (ramp: Quarter, outer: Quarter): Storing | null => {
  if (!isWhole(ramp) || !isWhole(outer)) return null
  const pair = { ramp: ramp.name, outer: outer.name }
  if (outer.design.sides.count > 2)
    return { ...pair, slid: [], low: { timber: 'none', height: 0 }, stored: null }
  const slid = ways.map((way) => slideIn(ramp, outer, way))
  const best = slid.reduce((a, b) => (b.out < a.out - same ? b : a))
  const [own, around] = [standingBox(ramp), standingBox(outer)]
  return {
    ...pair,
    slid,
    low: lowTimber(ramp, outer, slid[0]!),
    stored:
      best.depth > same
        ? [
            Math.max(around.x1, best.front + own.x1 - own.x0) - Math.min(around.x0, best.front),
            outer.width,
            Math.max(around.y1, own.y1),
          ]
        : null,
  }
}

/** It is lifted over where it comes to lie wholly in front of the timber, and finds the height for it on the way. */
export const lowTimber = (ramp: SolvedQuarter, outer: SolvedQuarter, slid: Slid): Storing['low'] => {
  const corners = outer.deckTimbers
    .filter(({ role }) => role === 'back' || role === 'wheels')
    .flatMap(timberCorners)
  if (corners.length === 0) return { timber: 'none', height: 0 }
  const { x0, y1: height } = pointsBounds(corners)
  const { x0: foremost, x1: last } = standingBox(ramp)
  const long = last - foremost
  const over = slideIn(ramp, outer, 'toe-first', height)
  if (slid.front + long <= x0 + same && over.front + long <= x0 + same) return { timber: 'lift over', height }
  return { timber: over.out <= same ? 'leave out or raise' : 'leave out', height }
}
