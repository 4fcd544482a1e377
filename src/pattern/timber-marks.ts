import { cross } from '../drawing/cross.ts'
import { type Drawing, stroke } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { circle, pathOf, polygonOf } from '../geometry/path.ts'
import { type Point, pointBetween, pointToward } from '../geometry/point.ts'
import { type Timber, timberCorners } from '../ramp/frame/timber.ts'
import type { PatternLabel, TimberScrews } from './pattern.ts'
import { letters, pens } from './pens.ts'

export const timberOutline = (timber: Timber) => {
  const [first, ...others] = timberCorners(timber)
  return polygonOf(first!, ...others)
}

/** Half the length of the strokes of the X that says on which side of a line the timber stands, mm. */
export const timberSign = 3

/** Radius of the ring round a screw's cross, mm. */
export const screwRing = 2

/** Ends of the long way of a timber's rectangle: its outer end or its face first. */
const longWay = (timber: Timber): readonly [Point, Point] => {
  const [a, b, c, d] = timberCorners(timber) as [Point, Point, Point, Point]
  return timber.depth >= timber.width
    ? [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
    : [pointBetween(a, d, 0.5), pointBetween(b, c, 0.5)]
}

/** Where along the long way things stand: screws, the X, and the label where it finds room. */
const shares = { screws: [0.14, 0.86], sign: 0.74, label: [0.5, 0.36, 0.6, 0.28] } as const

/** Where the pieces of a side meet on a timber its screws go to both sides of the joint: so far off, of its width. */
const offJoint = 1 / 4

/** Dashed outline, an X in it, two crosses in rings for its screws, a line at the middle of the face that carries the skin. */
export const timberMarks = (timber: Timber, spliced = false): Drawing => {
  const [a, b, c, d] = timberCorners(timber) as [Point, Point, Point, Point]
  const [face, foot] = [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
  return [
    // three sides: the fourth is the cut line's own
    stroke('mark', pathOf(b, c, d, a), pens.stud),
    stroke('mark', pathOf(face, pointBetween(face, foot, Math.min(1, 8 / timber.depth))), pens.mark),
    ...screwMiddles(timber, spliced).flatMap((at) => [
      ...cross('mark', at, screwRing, pens.cross, timber.angle),
      stroke('mark', circle(at, screwRing), pens.cross),
    ]),
    ...cross('mark', signMiddle(timber, spliced), timberSign, pens.mark, timber.angle + Math.PI / 4),
  ]
}

const signMiddle = (timber: Timber, spliced: boolean): Point => {
  const at = pointBetween(...longWay(timber), shares.sign)
  return spliced ? pointToward(at, timber.angle, offJoint * timber.width) : at
}

const screwMiddles = (timber: Timber, spliced: boolean): readonly Point[] => {
  const [from, to] = longWay(timber)
  // of one that lies flat they are on both sides already
  const off = spliced && timber.depth >= timber.width ? offJoint * timber.width : 0
  return shares.screws.map((t, i) =>
    pointToward(pointBetween(from, to, t), timber.angle, i === 0 ? -off : off),
  )
}

export const timberScrews = (timber: Timber, number: number, spliced = false): TimberScrews => ({
  timber: number,
  middles: screwMiddles(timber, spliced),
  sign: signMiddle(timber, spliced),
})

/** Its number and how it lies. */
export const timberLabel = (timber: Timber, number: number, spliced = false): PatternLabel => {
  const words = `stud ${number} ${timber.lies === 'flat' ? 'flat' : 'on edge'}`
  // within the narrow way of a usual section where that leaves letters to read
  const slim = (Math.min(timber.width, timber.depth) - 5) / textWidth(words, 1, 'bold')
  const [from, to] = longWay(timber)
  return {
    words,
    size: Math.min(letters.word, timber.depth * 0.4, Math.max(slim, 3)),
    // beside one that a joint runs along
    places: shares.label.map((t) =>
      pointToward(pointBetween(from, to, t), timber.angle, spliced ? timber.width : 0),
    ),
  }
}
