import { curvedOf } from '../../design/kind-traits.ts'
import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { boxCorners } from '../../geometry/clip.ts'
import type { Point } from '../../geometry/point.ts'
import { same } from '../check/offer.ts'
import { timberCorners } from '../frame/timber.ts'
import type { Quarter, Ramp, SolvedQuarter } from '../ramp.ts'
import {
  bestWay,
  type Low,
  nothingLow,
  type Part,
  type Slid,
  type Storing,
  type Way,
  ways,
} from '../stored.ts'
import { bodyFlanks, isLow, isWhole, type PartFlank, shelterFlanks } from './body.ts'
import { type Flank, raised, turnedRound, upsideDown } from './flank.ts'
import { type Obstacle, obstaclesOf, pushedTo } from './slide.ts'

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
 * How far a ramp goes into another, in a given way and so far above the floor. What stands low at the other's back does not
 * count: `whatIsLow` tells what to do about it.
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
    corner: shift,
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

/** The ramp that another of the design is kept in; undefined where it is kept in none. */
export const outerOf = (ramp: Quarter, ramps: readonly Ramp[]): Quarter | undefined =>
  curvedOf(ramps).find(({ name }) => name === ramp.design.storesInside?.ramp)

/** Every ramp that is kept in another, by its own words of the design; none where one of the two could not be solved. */
export const solveStorings = (ramps: readonly Ramp[]): readonly Storing[] => {
  const storings: Storing[] = []
  for (const ramp of curvedOf(ramps)) {
    const outer = outerOf(ramp, ramps)
    if (!outer) continue
    const before = storings.findLast((one) => one.outer === outer.name && one.stored !== null)
    const storing = solveStoring(ramp, outer, before ?? null)
    if (storing) storings.push(storing)
  }
  return storings
}

/** Where it would lie in the same place as one `before` it, it stays behind that. */
const slideBehind = (slid: Slid, before: Storing | null, { length }: SolvedQuarter): Slid => {
  const rear = before ? bestWay(before).out + length : slid.front
  const by = rear - slid.front
  return by <= same
    ? slid
    : {
        ...slid,
        depth: Math.max(0, Math.min(slid.depth, length - rear)),
        out: slid.out + by,
        front: rear,
        corner: slid.corner + by,
        tight: null,
      }
}

const solveStoring = (ramp: Quarter, outer: Quarter, before: Storing | null): Storing | null => {
  if (!isWhole(ramp) || !isWhole(outer)) return null
  const names = { ramp: ramp.name, outer: outer.name, behind: before?.ramp ?? null }
  if (outer.design.sides.count > 2) return { ...names, slid: [], low: nothingLow, stored: null, span: [0, 0] }
  const pair = pairOf(ramp, outer)
  const slid = ways.map((way) => slideBehind(slideIn(pair, way), before, outer))
  const best = bestWay({ slid })
  const [own, around] = [pair.box, standingBox(outer)]
  const [from, to] = [
    Math.min(around.x0, best.front),
    Math.max(around.x1, best.front + own.x1 - own.x0),
  ] as const
  return {
    ...names,
    slid,
    low: whatIsLow(pair, slid[0]!, before),
    stored: best.depth > same ? [to - from, outer.width, Math.max(around.y1, own.y1)] : null,
    span: [from, to],
  }
}

/** The ramp is lifted over where it comes to lie wholly in front of what is low, and finds the height for it on the way. */
const whatIsLow = (pair: Pair, slid: Slid, ahead: Storing | null): Low => {
  const { studs, deckTimbers, wheels, design } = pair.outer
  const low = deckTimbers.flatMap((timber, i) =>
    isLow(timber) ? [{ timber, number: studs.length + i + 1 }] : [],
  )
  if (low.length === 0) return nothingLow
  const corners = low.flatMap(({ timber }) => timberCorners(timber))
  const round = wheels ? circleCorners(wheels.centre, design.wheels!.diameter / 2) : []
  const { x0, y1: height } = pointsBounds([...corners, ...round])
  const long = pair.box.x1 - pair.box.x0
  const over = slideBehind(slideIn(pair, 'toe-first', height), ahead, pair.outer)
  const before = slid.front + long <= x0 + same && over.front + long <= x0 + same
  return {
    timber: before ? 'lift over' : over.out <= same ? 'leave out or raise' : 'leave out',
    height,
    numbers: low.map(({ number }) => number),
    wheels: wheels !== null,
  }
}

const circleCorners = ({ x, y }: Point, radius: number): readonly Point[] =>
  boxCorners({ x0: x - radius, y0: y - radius, x1: x + radius, y1: y + radius })
