import type { Units } from '../../design/design.ts'
import type { Point } from '../../geometry/point.ts'
import { quote } from '../../length/quote.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, offer, rounded, same } from '../check/offer.ts'
import { timberCorners } from '../frame/timber.ts'
import type { Quarter } from '../ramp.ts'

/** A ramp whose side could be solved. */
type Solved = Quarter & { readonly [K in 'transition' | 'side' | 'length']: NonNullable<Quarter[K]> }

const isSolved = (ramp: Quarter): ramp is Solved =>
  ramp.transition !== null && ramp.side !== null && ramp.length !== null

/** Profiles are compared in columns so wide, mm. */
const column = 2

/** Left behind the notch by a deck that is offered, mm. */
const leastDeck = 90

/** Whether a ramp goes into the one it is stored in, pushed in from the back on the floor, toe first. */
export const storesFindings = (ramp: Quarter, outer: Quarter, units: Units): readonly Finding[] => {
  const name = quote(outer.name)
  const ribs = outer.design.sides.count - 2
  if (ribs > 0)
    return [
      warn(
        'stores-fit',
        `${name} has ${ribs === 1 ? 'a middle rib' : `${ribs} middle ribs`}, ${rounded(outer.studLength, units)} from side to side, ` +
          `and this ramp is ${rounded(ramp.width, units)} wide: it does not go in; give ${name} two sides only (sides: { count: 2 })`,
      ),
    ]
  if (!isSolved(ramp) || !isSolved(outer)) return []
  const top = Math.max(...outlineTop(ramp).map((p) => p.y))
  const under = clearance(outer)
  if (top > under + same) {
    const { height } = ramp.design
    // the face at the lip rises by less than the frame does
    const { radius } = ramp.transition
    const by = ((top - under) * radius.frame) / radius.surface
    return [
      warn(
        'stores-fit',
        `this ramp is ${measured(top, units)} high, and ${name} has ${measured(under, units)} under the timbers of its deck: it does not go in; ` +
          `make its ${height.layer} height ${offer(units).atMost(height.value - by)} or less, or ${name} as much higher`,
      ),
    ]
  }
  return depthFindings(ramp, outer, name, units)
}

const depthFindings = (ramp: Solved, outer: Solved, name: string, units: Units): readonly Finding[] => {
  const out = pushedIn(ramp, outer) + ramp.length - outer.length
  const corner = outer.deckTimbers.find((timber) => timber.role === 'back')
  const words: string[] = []
  if (out > column) {
    const { from, value } = ramp.design.back
    const shorter = value - out
    const notch = ramp.coping?.along ?? 0
    const room = from === 'deck' ? shorter : shorter - ramp.transition.run
    words.push(
      `it stands ${rounded(out, units)} out at the back of ${name}` +
        (room > notch + leastDeck
          ? `; a ${from === 'deck' ? 'deck' : 'length'} of ${offer(units).atMost(shorter)} or less goes in whole`
          : ''),
    )
  }
  if (corner)
    words.push(
      `the timber in the back bottom corner of ${name}, ${rounded(corner.depth, units)} high, is in the way: lift over it, or leave it out`,
    )
  return words.length > 0
    ? [note('stores-fit', `pushed in on the floor, toe first: ${words.join('; ')}`)]
    : []
}

/** Height of what lies lowest under the outer ramp's deck, before the back bottom corner. */
const clearance = (outer: Solved): number =>
  Math.min(
    outer.side.height,
    ...outer.deckTimbers
      .filter(({ role }) => role === 'deck' || role === 'backing')
      .map(({ y, depth }) => y - depth),
  )

/** The upper outline of a ramp with its skin, board and pipe, as points no farther apart than half a column. */
const outlineTop = (ramp: Solved): readonly Point[] => {
  const { transition, coping, skinThickness, deckBoard, length } = ramp
  const { curve, heights } = transition
  const face = curve.offset(skinThickness)
  const end = Math.max(curve.toe, ...ramp.skin.map((layer) => layer.end))
  const along = stepped(0, curve.lengthTo(end)).map((at) => face.point(curve.placeAtLength(at)))
  const pipe = coping
    ? stepped(0, Math.PI * coping.outside).map((at) => ({
        x: coping.centre.x + (coping.outside / 2) * Math.cos((2 * at) / coping.outside),
        y: coping.centre.y + (coping.outside / 2) * Math.sin((2 * at) / coping.outside),
      }))
    : []
  const level = deckBoard ? heights.deck : heights.frame
  const board = stepped(deckBoard?.from ?? transition.lip.x, length).map((x) => ({ x, y: level }))
  const front = line(transition.toe, face.point(curve.toe))
  return [...front, ...along, ...pipe, ...board]
}

/** What hangs over the room inside a ramp: the skin's lower face, the timbers, the pipe, the top line. */
const outlineUnder = ({ transition, coping, studs, deckTimbers, length }: Solved): readonly Point[] => {
  const { curve, lip, heights } = transition
  const skin = stepped(0, transition.arc).map((at) => curve.point(curve.placeAtLength(at)))
  const boxes = [...studs, ...deckTimbers.filter(({ role }) => role !== 'back')].flatMap((timber) => {
    const corners = timberCorners(timber)
    return corners.flatMap((p, i) => line(p, corners[(i + 1) % corners.length]!))
  })
  const pipe = coping
    ? stepped(-coping.outside / 2, coping.outside / 2).map((dx) => ({
        x: coping.centre.x + dx,
        y: coping.centre.y - Math.sqrt(Math.max(0, (coping.outside / 2) ** 2 - dx * dx)),
      }))
    : []
  return [...skin, ...boxes, ...pipe, ...stepped(lip.x, length).map((x) => ({ x, y: heights.frame }))]
}

const stepped = (from: number, to: number): readonly number[] => {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / (column / 2)))
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count)
}

const line = (a: Point, b: Point): readonly Point[] =>
  stepped(0, Math.hypot(b.x - a.x, b.y - a.y)).map((at, _, all) => {
    const t = all.at(-1)! === 0 ? 0 : at / all.at(-1)!
    return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }
  })

/** The highest or lowest point of each column from `first` on; what a column without one holds is `none`. */
const columns = (
  points: readonly Point[],
  first: number,
  last: number,
  none: number,
  better: (a: number, b: number) => number,
): Float64Array => {
  const found = new Float64Array(last - first + 1).fill(none)
  for (const { x, y } of points) {
    const i = Math.floor(x / column) - first
    if (i >= 0 && i < found.length) found[i] = better(found[i]!, y)
  }
  return found
}

/** How far behind the outer ramp's front the inner one's front edge comes to stand. */
const pushedIn = (ramp: Solved, outer: Solved): number => {
  const top = outlineTop(ramp)
  // the skin leans over the front
  const first = Math.floor(Math.min(...top.map(({ x }) => x)) / column)
  const own = columns(top, first, Math.floor(ramp.length / column), Number.NEGATIVE_INFINITY, Math.max)
  const count = Math.ceil(outer.length / column)
  const over = columns(outlineUnder(outer), 0, count, Number.POSITIVE_INFINITY, Math.min)
  const free = (shift: number): boolean => {
    for (let i = Math.max(0, -first - shift); i < own.length && first + shift + i <= count; i++)
      if (own[i]! > over[first + shift + i]! + same) return false
    return true
  }
  let shift = count
  while (shift > 0 && free(shift - 1)) shift--
  return shift * column
}
