import { cross } from '../drawing/cross.ts'
import { type Drawing, stroke } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { type Convex, pathClip, pathOutside } from '../geometry/clip.ts'
import { pathLength } from '../geometry/length.ts'
import { pathDistance } from '../geometry/nearest.ts'
import { circle, type Path, pathOf, polygonOf } from '../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../geometry/point.ts'
import { type Timber, timberCorners } from '../ramp/frame/timber.ts'
import type { PatternLabel, TimberScrews } from './pattern.ts'
import { letters, pens } from './pens.ts'

/** A timber's name on paper. */
interface TimberName {
  readonly called: TimberScrews['called']
  readonly number: number
}

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

/** Where along the long way things stand: screws, the X and the label where they find room, and where a line to the label begins. */
const shares = {
  screws: [0.14, 0.86],
  signs: [0.74, 0.26, 0.62, 0.38, 0.5, 0.68, 0.32],
  label: [0.5, 0.36, 0.6, 0.28],
  dots: [0.5, 0.4, 0.62, 0.3, 0.7, 0.22, 0.78, 0.07, 0.93],
} as const

/** Across the narrow way from its middle, of its width. */
const aside = [0, 0.28, -0.28] as const

/** Where the pieces of a side meet on a timber its screws go to both sides of the joint: so far off, of its width. */
const offJoint = 1 / 4

/** Edges of two timbers no farther apart than this are one line on paper, mm. */
const oneLine = 0.6

/** A face farther off the panel's outline than the chord of a curve lies on no line that is sawn, mm. */
const offOutline = 5

/** Dashed outlines; where two timbers share an edge it is drawn once, and so is a face along the panel's `outline`. */
export const timberOutlines = (timbers: readonly Timber[], outline: Path): Drawing => {
  const corners = timbers.map((timber) => timberCorners(timber) as [Point, Point, Point, Point])
  return corners.flatMap(([a, b, c, d], i) => {
    // three sides where the fourth is the cut line's own: a stud on the bottom edge has its face within the panel
    const within = pathDistance(outline, pointBetween(a, b, 0.5)) > offOutline
    const sides = [pathOf(b, c), pathOf(c, d), pathOf(d, a), ...(within ? [pathOf(a, b)] : [])]
    const earlier = corners
      .slice(0, i)
      .filter(([p]) => pointDistance(p, a) < 2 * (timbers[i]!.width + timbers[i]!.depth))
      .flatMap(([p, q, r, s]) => [pathOf(q, r), pathOf(r, s), pathOf(s, p)])
      .map((side) => alongside(side.start, side.pieces[0]!.to))
    const left = earlier.reduce<readonly Path[]>(
      (paths, band) => paths.flatMap((path) => (runsIn(path, band) ? pathOutside(path, band) : [path])),
      sides,
    )
    const whole = left.every((path, k) => path === sides[k])
    return (whole ? [within ? pathOf(a, b, c, d, a) : pathOf(b, c, d, a)] : left).map((path) =>
      stroke('mark', path, pens.stud),
    )
  })
}

/** All that lies beside a straight line no farther off than what is one with it. */
const alongside = (p: Point, q: Point): Convex => {
  const square = pointAngle(p, q) - Math.PI / 2
  const [e, f] = [pointToward(p, square, oneLine), pointToward(q, square, oneLine)]
  return [e, f, pointToward(q, square, -oneLine), pointToward(p, square, -oneLine)]
}

/** Whether more of a straight line lies in a band than where the two cross. */
const runsIn = (path: Path, band: Convex): boolean =>
  pathClip(path, band).some((part) => pathLength(part) > 5 * oneLine)

/** A line at the middle of the face that carries the skin. */
export const timberMarks = (timber: Timber): Drawing => {
  const [a, b, c, d] = timberCorners(timber) as [Point, Point, Point, Point]
  const [face, foot] = [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
  return [stroke('mark', pathOf(face, pointBetween(face, foot, Math.min(1, 8 / timber.depth))), pens.mark)]
}

/** A cross in a ring for each of a timber's screws. */
export const screwMarks = (at: Point, angle: number): Drawing => [
  ...cross('mark', at, screwRing, pens.cross, angle),
  stroke('mark', circle(at, screwRing), pens.cross),
]

/** The X on a timber's wood. */
export const timberX = (at: Point, angle: number): Drawing =>
  cross('mark', at, timberSign, pens.mark, angle + Math.PI / 4)

const signMiddles = (timber: Timber, spliced: boolean): readonly Point[] => {
  const [from, to] = longWay(timber)
  const offs = spliced ? [offJoint, -offJoint] : [0]
  return offs.flatMap((off) =>
    shares.signs.map((t) => pointToward(pointBetween(from, to, t), timber.angle, off * timber.width)),
  )
}

const screwMiddles = (timber: Timber, spliced: boolean): readonly Point[] => {
  const [from, to] = longWay(timber)
  // of one that lies flat they are on both sides already
  const off = spliced && timber.depth >= timber.width ? offJoint * timber.width : 0
  return shares.screws.map((t, i) =>
    pointToward(pointBetween(from, to, t), timber.angle, i === 0 ? -off : off),
  )
}

export const timberScrews = (
  timber: Timber,
  { called, number }: TimberName,
  spliced = false,
): TimberScrews => ({
  called,
  timber: number,
  angle: timber.angle,
  middles: screwMiddles(timber, spliced),
  signs: signMiddles(timber, spliced),
})

/** Its name and how it lies. */
export const timberLabel = (
  timber: Timber,
  { called, number }: TimberName,
  spliced = false,
): PatternLabel => {
  const words = `${called} ${number} ${timber.lies === 'flat' ? 'flat' : 'on edge'}`
  // within the narrow way of a usual section where that leaves letters to read
  const narrow = Math.min(timber.width, timber.depth)
  const slim = (narrow - 5) / textWidth(words, 1, 'bold')
  const [from, to] = longWay(timber)
  const across = pointAngle(from, to) + Math.PI / 2
  return {
    words,
    size: Math.min(letters.word, timber.depth * 0.4, Math.max(slim, 3)),
    // beside one that a joint runs along
    places: shares.label.map((t) =>
      pointToward(pointBetween(from, to, t), timber.angle, spliced ? timber.width : 0),
    ),
    dots: shares.dots.flatMap((t) =>
      aside.map((off) => pointToward(pointBetween(from, to, t), across, off * narrow)),
    ),
  }
}
