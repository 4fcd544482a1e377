import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import { boxCorners } from '../../geometry/clip.ts'
import { polygonContains } from '../../geometry/contains.ts'
import { circle, pathOf } from '../../geometry/path.ts'
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

/** Where it costs least, taken from then on. */
const leastOf = (
  taken: Occupancy,
  words: string,
  size: number,
  places: readonly WordPlace[],
): { readonly at: Point; readonly box: Box } => {
  const best = places.reduce((kept, place) => (place.cost < kept.cost ? place : kept))
  const box = wordBox(words, size, best.at)
  occupyBox(taken, box, never | named)
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
  const [most, top] = [taken.columns * taken.step, taken.rows * taken.step]
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
      .filter(({ x, y }) => x >= 0 && x + width <= most && y >= 0 && y + height <= top)
      .map((at) => ({ at, away })),
  )
}

const nearestOf = ({ x0, y0, x1, y1 }: Box, p: Point): Point => ({
  x: Math.min(Math.max(p.x, x0), x1),
  y: Math.min(Math.max(p.y, y0), y1),
})

/** What a line from a point to a box would run over of other names. */
const crossedBy = (taken: Occupancy, p: Point, box: Box): number => {
  const end = nearestOf(box, p)
  return (
    100 * takenUnder(taken, [pointBetween(p, end, Math.min(0.5, 2.5 / pointDistance(p, end))), end], named)
  )
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
  layer: 'note' | 'datum',
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

/** The ring of a named point, mm. */
const ring = 0.8

/** A point that is measured from: a ring, and off the side, which is told by points, a name to which a line leads. */
export const ringedPoint = (
  taken: Occupancy,
  p: Point,
  words: string,
  size: number,
  side: readonly Point[],
): Drawing => {
  const places = besides(taken, p, words, size, [2.4, 3, 4.2, 5.5, 7, 9.5, 12.5, 16]).map(({ at, away }) => {
    const box = wordBox(words, size, at)
    const onSide = boxCorners(box).some((corner) => polygonContains(side, corner)) ? 1e6 : 0
    return { at, cost: onSide + coverOf(taken, box) + crossedBy(taken, p, box) + away / 10 }
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
