import { cross } from '../drawing/cross.ts'
import { type Drawing, fill, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { circle, pathOf, polygonOf, rectangle } from '../geometry/path.ts'
import { type Point, pointBetween } from '../geometry/point.ts'
import { type Timber, timberCorners } from '../ramp/timber.ts'
import { letters, pens } from './pens.ts'

export const timberOutline = (timber: Timber) => {
  const [first, ...others] = timberCorners(timber)
  return polygonOf(first!, ...others)
}

/** Half the size of the X that says on which side of a line the timber stands, mm. */
const sign = 3

/** Radius of the ring round a screw's cross, mm. */
const screwRing = 2

/**
 * Dashed outline, an X in it, two crosses in rings for its screws, a line at the middle of the face that carries the skin, and in
 * a box its number and how it lies.
 */
export const timberMarks = (timber: Timber, number: number): Drawing => {
  const [a, b, c, d] = timberCorners(timber) as [Point, Point, Point, Point]
  const [face, foot] = [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
  const middle = pointBetween(face, foot, 0.5)
  // the long way of the rectangle, end to end
  const [from, to] =
    timber.depth >= timber.width ? [face, foot] : [pointBetween(a, d, 0.5), pointBetween(b, c, 0.5)]
  const words = `stud ${number} ${timber.lies === 'flat' ? 'flat' : 'on edge'}`
  // within the narrow way of a usual section where that leaves letters to read
  const slim = (Math.min(timber.width, timber.depth) - 5) / textWidth(words, 1, 'bold')
  const size = Math.min(letters.word, timber.depth * 0.4, Math.max(slim, 3))
  const half = { x: textWidth(words, size, 'bold') / 2 + 1.5, y: size / 2 + 1.5 }
  const inner = { x: half.x - pens.mark.width, y: half.y - pens.mark.width }
  const frame = ({ x, y }: Point) => rectangle(middle.x - x, middle.y - y, middle.x + x, middle.y + y)
  return [
    stroke('mark', timberOutline(timber), pens.stud),
    stroke('mark', pathOf(face, pointBetween(face, foot, Math.min(1, 8 / timber.depth))), pens.mark),
    ...[0.14, 0.86].flatMap((t) => {
      const at = pointBetween(from, to, t)
      return [
        ...cross('mark', at, 2, pens.cross, timber.angle),
        stroke('mark', circle(at, screwRing), pens.cross),
      ]
    }),
    ...cross('mark', pointBetween(from, to, 0.74), sign, pens.mark, timber.angle + Math.PI / 4),
    // a frame of two fills: a page shows it whole or not at all
    fill('mark', frame(half), 0),
    fill('mark', frame(inner), 1),
    text('mark', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' }),
  ]
}
