import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { same } from '../check/offer.ts'
import { timberCorners } from '../frame/timber.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import { bodyFlanks, isWhole, type Part, type PartFlank, shelterFlanks } from './body.ts'
import { type Flank, raised, turnedRound, upsideDown } from './flank.ts'
import { type Obstacle, obstaclesOf, pushedTo } from './slide.ts'

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
export const standingBox = (ramp: SolvedQuarter): Box => boxOf(bodyFlanks(ramp), ramp)

const boxOf = (body: readonly PartFlank[], { length }: SolvedQuarter): Box => {
  const ends = body.flatMap(({ flank: { low, high, at } }) =>
    [low, (low + high) / 2, high].map((y) => ({ x: at(y), y })),
  )
  return pointsBounds([...ends, { x: 0, y: 0 }, { x: length, y: 0 }])
}

/** A ramp, and the room under another that it is pushed into. */
export interface Pair {
  readonly body: readonly PartFlank[]
  readonly box: Box
  readonly outer: SolvedQuarter
  /** what hangs in the room under the other */
  readonly over: readonly Obstacle<Part>[]
}

export const pairOf = (ramp: SolvedQuarter, outer: SolvedQuarter): Pair => {
  const body = bodyFlanks(ramp)
  return { body, box: boxOf(body, ramp), outer, over: obstaclesOf(shelterFlanks(outer)) }
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
 * does not count: `lowTimber` tells what to do about it.
 */
export const slideIn = (
  { body: own, box: { y1: top, x0, x1 }, outer, over }: Pair,
  way: Way,
  above = 0,
): Slid => {
  const lying = posed(own, way, top)
  const body = above === 0 ? lying : lying.map(({ flank, of }) => ({ flank: raised(flank, above), of }))
  const touch = pushedTo(
    body.map(({ flank }) => flank),
    over,
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

/** Whether it is out while the other ramp is in. */
export const comesOut = (timber: LowTimber): boolean => timber.startsWith('leave out')

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

/** The way that leaves least of it outside; the first of those that are as good. */
export const bestWay = ({ slid }: Pick<Storing, 'slid'>): Slid =>
  slid.reduce((a, b) => (b.out < a.out - same ? b : a))

/** Null where one of the two could not be solved. */
export const solveStoring = (ramp: Quarter, outer: Quarter): Storing | null => {
  if (!isWhole(ramp) || !isWhole(outer)) return null
  const names = { ramp: ramp.name, outer: outer.name }
  if (outer.design.sides.count > 2)
    return { ...names, slid: [], low: { timber: 'none', height: 0 }, stored: null }
  const pair = pairOf(ramp, outer)
  const slid = ways.map((way) => slideIn(pair, way))
  const best = bestWay({ slid })
  const [own, around] = [pair.box, standingBox(outer)]
  return {
    ...names,
    slid,
    low: lowTimber(pair, slid[0]!),
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
export const lowTimber = (pair: Pair, slid: Slid): Storing['low'] => {
  const corners = pair.outer.deckTimbers
    .filter(({ role }) => role === 'back' || role === 'wheels')
    .flatMap(timberCorners)
  if (corners.length === 0) return { timber: 'none', height: 0 }
  const { x0, y1: height } = pointsBounds(corners)
  const long = pair.box.x1 - pair.box.x0
  const over = slideIn(pair, 'toe-first', height)
  if (slid.front + long <= x0 + same && over.front + long <= x0 + same) return { timber: 'lift over', height }
  return { timber: over.out <= same ? 'leave out or raise' : 'leave out', height }
}
