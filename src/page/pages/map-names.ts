import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import { boxCorners, type Convex, convexContains } from '../../geometry/clip.ts'
import { circle, pathOf, polygonOf } from '../../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import { pieceLetters } from '../../ramp/splice/splice.ts'
import { clearIn, type Occupancy, occupyBox, takenUnder, weightIn } from '../room/occupancy.ts'
import { occupyPath } from '../room/occupy-path.ts'
import { clear, crossOrWord, never, rather } from './map-numbers.ts'

/** Where a word may stand, from its lower left corner. */
interface WordPlace {
  readonly at: Point
  /** it costs no less, whatever it lies on */
  readonly least: number
}

/** A figure beside a name reads as a part of it unless it stands off by this, mm. */
export const figureGap = 1.4

/** Where it costs least, the first of equals, taken from then on; what cannot cost less than what is known is not looked at. */
const leastOf = <P extends WordPlace>(
  taken: Occupancy,
  words: string,
  size: number,
  places: readonly P[],
  costOf: (place: P, box: Box, most: number) => number,
): { readonly at: Point; readonly box: Box } => {
  let best: { readonly at: Point; readonly box: Box } | undefined
  let most = Number.POSITIVE_INFINITY
  for (const place of places) {
    if (place.least >= most) continue
    const box = wordBox(words, size, place.at)
    const cost = costOf(place, box, most)
    if (best && cost >= most) continue
    best = { at: place.at, box }
    most = cost
  }
  occupyBox(taken, boxGrow(best!.box, figureGap), never | crossOrWord)
  return best!
}

const wordBox = (words: string, size: number, { x, y }: Point): Box =>
  boxGrow({ x0: x, y0: y, x1: x + textWidth(words, size, 'bold'), y1: y + size }, clear)

/** What a box lies on: what it must keep off a hundred times what it should. */
const coverOf = (taken: Occupancy, box: Box): number =>
  weightIn(taken, coverWeights, Number.POSITIVE_INFINITY, box.x0, box.y0, box.x1, box.y1)

const coverWeights = Array.from(
  { length: 8 },
  (_, kinds) => (kinds & never ? 100 : 0) + (kinds & rather ? 1 : 0),
)

interface Beside extends WordPlace {
  readonly away: number
}

/** Lower left corners of a word beside a point, at some distances. */
const besides = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  distances: readonly number[],
): readonly Beside[] => {
  const [width, height] = [textWidth(words, size, 'bold'), size]
  const places: Beside[] = []
  for (const away of distances)
    for (const at of [
      { x: p.x - away - width, y: p.y + away },
      { x: p.x + away, y: p.y + away },
      { x: p.x - away - width, y: p.y - away - height },
      { x: p.x + away, y: p.y - away - height },
      { x: p.x - away - width, y: p.y - height / 2 },
      { x: p.x + away, y: p.y - height / 2 },
      { x: p.x - width / 2, y: p.y + away },
      { x: p.x - width / 2, y: p.y - away - height },
    ])
      if (within(taken, at, width, height)) places.push({ at, away, least: away / 10 })
  return places
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
  return 100 * takenUnder(taken, leads, crossOrWord) + 40 * takenUnder(taken, leads, never)
}

/** What a number of a page keeps off a letter where there is room, mm. */
const numberOff = 2.4

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
  onSide?: (p: Point) => boolean,
): Drawing => {
  const stands = onSide?.(p) ?? false
  const places = besides(taken, p, words, size, [1, 2, 3.5, 5, 7, 9.5, 12.5])
  const { at, box } = leastOf(taken, words, size, places, ({ away }, box) => {
    // the letter of a cross on the side stands on it too
    const off = stands && !boxCorners(box).every((corner) => onSide!(corner)) ? 0.6 : 0
    return off + coverOf(taken, box) + (away > near ? crossedBy(taken, p, box) : 0) + away / 10
  })
  // a page's number beside it would be read as one with it
  occupyBox(taken, boxGrow(box, numberOff), rather)
  const end = nearestOf(box, p)
  const leads = pointDistance(p, end) > near ? pathOf(p, end) : null
  if (leads) occupyPath(taken, leads, affineIdentity, 0.2, never)
  return [...(leads ? [stroke(layer, leads, pens.tick)] : []), text(layer, at, size, words, { face: 'bold' })]
}

/** The arrowhead of a row's snap line, and from it to the row's letter, mm. */
const head = { long: 2.2, half: 0.8 } as const
const heads = [0.8, 2, 3.2] as const
/** How far aside of it, in heights of its letter. */
const asides = [0, 1, -1, 1.5, -1.5] as const

/** The letter of a row before the start of its snap line, at an arrowhead as the page has one; beside it where there is no room. */
export const rowName = (taken: Occupancy, from: Point, to: Point, letter: string, size: number): Drawing => {
  const along = pointAngle(from, to)
  const back = (by: number): Point => pointToward(from, along, -by)
  const base = back(head.long)
  const wing = (side: number): Point => pointToward(base, along + Math.PI / 2, side * head.half)
  const arrow = polygonOf(from, wing(1), wing(-1))
  const half = textWidth(letter, size, 'bold') / 2
  const places = heads.flatMap((away) =>
    asides.map((aside) => {
      const straight = back(head.long + away + Math.max(half, size / 2))
      const middle = pointToward(straight, along + Math.PI / 2, aside * size)
      return { at: { x: middle.x - half, y: middle.y - size / 2 }, least: 0 }
    }),
  )
  const found = [never | rather, never].flatMap((kinds) =>
    places.filter(
      ({ at }) => within(taken, at, 2 * half, size) && clearIn(taken, wordBox(letter, size, at), kinds),
    ),
  )
  occupyPath(taken, arrow, affineIdentity, 0.2, never | crossOrWord)
  const marks = [fill('note', arrow, 0)]
  if (found.length === 0) return [...marks, ...besidePoint(taken, from, letter, size, 'note')]
  const { at } = leastOf(taken, letter, size, found, () => 0)
  return [...marks, text('note', at, size, letter, { face: 'bold' })]
}

/** The ring of a named point, mm. */
const ring = 0.8

/** A point that is measured from: a ring, and off the side a name to which a line leads; off the pages' `cells` where that is near. */
export const ringedPoint = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  onSide: (p: Point) => boolean,
  cells: readonly Convex[],
): Drawing => {
  const places = besides(taken, p, words, size, [2.4, 3, 4.2, 5.5, 7, 9.5, 12.5, 16])
  const { at, box } = leastOf(taken, words, size, places, ({ away }, box, most) => {
    const off = boxCorners(box).some(onSide) ? 1e6 : 0
    if (off >= most) return off
    // a page keeps its room for its number
    const onPage = cells.some((cell) => boxCorners(box).some((corner) => convexContains(cell, corner)))
      ? 0.6
      : 0
    return off + onPage + coverOf(taken, box) + crossedBy(taken, p, box) + away / 10
  })
  const end = nearestOf(box, p)
  const leads = pathOf(pointToward(p, pointAngle(p, end), ring), end)
  occupyPath(taken, leads, affineIdentity, 0.2, never | crossOrWord)
  return [
    stroke('note', circle(p, ring), pens.mark),
    stroke('note', leads, pens.tick),
    text('note', at, size, words, { face: 'bold' }),
  ]
}

/** Places over a piece where its name is tried. */
const pieceShares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9]

/** The name of each piece of a side, in the piece. */
export const namedPieces = (
  taken: Occupancy,
  { joints, length, height }: Pattern,
  at: (p: Point) => Point,
  size: number,
  onSide: (p: Point) => boolean,
): Drawing => {
  if (joints.length === 0) return []
  const ends = [0, ...joints.map(([top, foot]) => (top.x + foot.x) / 2), length]
  return ends.slice(1).flatMap((end, i) => {
    const words = `piece ${pieceLetters[i]}`
    const half = textWidth(words, size, 'bold') / 2
    const places = pieceShares.flatMap((u) =>
      pieceShares.map((v) => {
        const middle = at({ x: ends[i]! + u * (end - ends[i]!), y: v * height })
        const least = Math.abs(u - 0.5) + Math.abs(v - 0.5)
        return { at: { x: middle.x - half, y: middle.y - size / 2 }, least }
      }),
    )
    const best = leastOf(
      taken,
      words,
      size,
      places,
      ({ least }, box) => (boxCorners(box).every(onSide) ? 0 : 1e6) + coverOf(taken, box) + least,
    )
    return [text('note', best.at, size, words, { face: 'bold' })]
  })
}
