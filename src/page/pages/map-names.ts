import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import { boxCorners, type Convex, convexContains } from '../../geometry/clip.ts'
import { polygonContains } from '../../geometry/contains.ts'
import { circle, pathOf, polygonOf } from '../../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import { pieceLetters } from '../../ramp/splice/splice.ts'
import { type Occupancy, occupyBox, takenUnder } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { clear, named, never, rather } from './map-numbers.ts'

/** A word that may stand somewhere, with what speaks against it. */
interface WordPlace {
  readonly at: Point
  readonly cost: number
}

/** A figure beside a name reads as a part of it unless it stands off by this, mm. */
export const apart = 1.4

/** Where it costs least, taken from then on. */
const leastOf = (
  taken: Occupancy,
  words: string,
  size: number,
  places: readonly WordPlace[],
): { readonly at: Point; readonly box: Box } => {
  const best = places.reduce((kept, place) => (place.cost < kept.cost ? place : kept))
  const box = wordBox(words, size, best.at)
  occupyBox(taken, boxGrow(box, apart), never | named)
  return { at: best.at, box }
}

const wordBox = (words: string, size: number, { x, y }: Point): Box =>
  boxGrow({ x0: x, y0: y, x1: x + textWidth(words, size, 'bold'), y1: y + size }, clear)

/** What a box lies on: what it must keep off a hundred times what it should. */
const coverOf = (taken: Occupancy, box: Box): number =>
  100 * takenUnder(taken, boxCorners(box), never) + takenUnder(taken, boxCorners(box), rather)

/** Lower left corners of a word beside a point, at some distances. */
const besides = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  distances: readonly number[],
): readonly { readonly at: Point; readonly away: number }[] => {
  const [width, height] = [textWidth(words, size, 'bold'), size]
  return distances.flatMap((away) =>
    [
      { x: p.x - away - width, y: p.y + away },
      { x: p.x + away, y: p.y + away },
      { x: p.x - away - width, y: p.y - away - height },
      { x: p.x + away, y: p.y - away - height },
      { x: p.x - away - width, y: p.y - height / 2 },
      { x: p.x + away, y: p.y - height / 2 },
      { x: p.x - width / 2, y: p.y + away },
      { x: p.x - width / 2, y: p.y - away - height },
    ]
      .filter((at) => within(taken, at, width, height))
      .map((at) => ({ at, away })),
  )
}

/** Whether words from their lower left corner stay on the picture. */
const within = (
  { columns, rows, step }: Occupancy,
  { x, y }: Point,
  width: number,
  height: number,
): boolean => x >= 0 && x + width <= columns * step && y >= 0 && y + height <= rows * step

const nearestOf = ({ x0, y0, x1, y1 }: Box, p: Point): Point => ({
  x: Math.min(Math.max(p.x, x0), x1),
  y: Math.min(Math.max(p.y, y0), y1),
})

/** What a line from a point to a box would run over: of other names, and of the outline. */
const crossedBy = (taken: Occupancy, p: Point, box: Box): number => {
  const end = nearestOf(box, p)
  const leads = [pointBetween(p, end, Math.min(0.5, 2.5 / pointDistance(p, end))), end]
  return 100 * takenUnder(taken, leads, named) + 40 * takenUnder(taken, leads, never)
}

/** Farther from its point than this a line leads to a name, mm. */
const near = 3.5

/**
 * A word beside a point, the nearest place where it lies on nothing, above and before it among equals. To one that must stand farther
 * off a line leads.
 */
export const besidePoint = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  layer: 'note' | 'datum' = 'datum',
): Drawing => {
  const places = besides(taken, p, words, size, [1, 2, 3.5, 5, 7, 9.5, 12.5]).map(({ at, away }) => {
    const box = wordBox(words, size, at)
    return { at, cost: coverOf(taken, box) + (away > near ? crossedBy(taken, p, box) : 0) + away / 10 }
  })
  const { at, box } = leastOf(taken, words, size, places)
  const end = nearestOf(box, p)
  const leads = pointDistance(p, end) > near ? pathOf(p, end) : null
  if (leads) occupyPath(taken, leads, affineIdentity, 0.2, never)
  return [...(leads ? [stroke(layer, leads, pens.tick)] : []), text(layer, at, size, words, { face: 'bold' })]
}

/** The arrowhead of a row's snap line, and from it to the row's letter, mm. */
const head = { long: 2.2, half: 0.8 } as const
const heads = [0.8, 2, 3.2] as const

/** The letter of a row before the start of its snap line, at an arrowhead as the page has one; beside it where there is no room. */
export const rowName = (taken: Occupancy, from: Point, to: Point, letter: string, size: number): Drawing => {
  const along = pointAngle(from, to)
  const back = (by: number): Point => pointToward(from, along, -by)
  const base = back(head.long)
  const wing = (side: number): Point => pointToward(base, along + Math.PI / 2, side * head.half)
  const arrow = polygonOf(from, wing(1), wing(-1))
  const half = textWidth(letter, size, 'bold') / 2
  const places = heads
    .flatMap((away) =>
      [0, 1, -1].map((aside) => {
        const straight = back(head.long + away + Math.max(half, size / 2))
        const middle = pointToward(straight, along + Math.PI / 2, aside * size)
        return { x: middle.x - half, y: middle.y - size / 2 }
      }),
    )
    .filter((at) => within(taken, at, 2 * half, size) && coverOf(taken, wordBox(letter, size, at)) === 0)
    .map((at) => ({ at, cost: 0 }))
  occupyPath(taken, arrow, affineIdentity, 0.2, never | named)
  const marks = [fill('note', arrow, 0)]
  if (places.length === 0) return [...marks, ...besidePoint(taken, from, letter, size, 'note')]
  const { at } = leastOf(taken, letter, size, places)
  return [...marks, text('note', at, size, letter, { face: 'bold' })]
}

/** The ring of a named point, mm. */
const ring = 0.8

/** A point that is measured from: a ring, and off the side, which is told by points, a name to which a line leads; off the pages' `cells` where that is near. */
export const ringedPoint = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  side: readonly Point[],
  cells: readonly Convex[],
): Drawing => {
  const places = besides(taken, p, words, size, [2.4, 3, 4.2, 5.5, 7, 9.5, 12.5, 16]).map(({ at, away }) => {
    const box = wordBox(words, size, at)
    const onSide = boxCorners(box).some((corner) => polygonContains(side, corner)) ? 1e6 : 0
    // a page keeps its room for its number
    const onPage = cells.some((cell) => boxCorners(box).some((corner) => convexContains(cell, corner)))
      ? 0.6
      : 0
    return { at, cost: onSide + onPage + coverOf(taken, box) + crossedBy(taken, p, box) + away / 10 }
  })
  const { at, box } = leastOf(taken, words, size, places)
  const end = nearestOf(box, p)
  const leads = pathOf(pointToward(p, pointAngle(p, end), ring), end)
  occupyPath(taken, leads, affineIdentity, 0.2, never | named)
  return [
    stroke('note', circle(p, ring), pens.mark),
    stroke('note', leads, pens.tick),
    text('note', at, size, words, { face: 'bold' }),
  ]
}

/** Places over a piece where its name is tried. */
const pieceShares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9]

/** The name of each piece of a side, in the piece. */
export const pieceNames = (
  taken: Occupancy,
  { joints, length, height }: Pattern,
  at: (p: Point) => Point,
  size: number,
  side: readonly Point[],
): Drawing => {
  if (joints.length === 0) return []
  const ends = [0, ...joints.map(([top, foot]) => (top.x + foot.x) / 2), length]
  return ends.slice(1).flatMap((end, i) => {
    const words = `piece ${pieceLetters[i]}`
    const half = textWidth(words, size, 'bold') / 2
    const places = pieceShares.flatMap((u) =>
      pieceShares.map((v) => {
        const middle = at({ x: ends[i]! + u * (end - ends[i]!), y: v * height })
        const place = { x: middle.x - half, y: middle.y - size / 2 }
        const box = wordBox(words, size, place)
        const off = boxCorners(box).every((corner) => polygonContains(side, corner)) ? 0 : 1e6
        return { at: place, cost: off + coverOf(taken, box) + Math.abs(u - 0.5) + Math.abs(v - 0.5) }
      }),
    )
    const best = leastOf(taken, words, size, places)
    return [text('note', best.at, size, words, { face: 'bold' })]
  })
}
