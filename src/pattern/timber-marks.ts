import { cross } from '../drawing/cross.ts'
import { type Drawing, shared, stroke } from '../drawing/drawing.ts'
import { affineTranslate } from '../geometry/affine.ts'
import { pathDistance } from '../geometry/nearest.ts'
import { circle, type Path, pathOf, polygonOf } from '../geometry/path.ts'
import { type Point, pointBetween } from '../geometry/point.ts'
import { liesWords, type Timber, timberCorners } from '../ramp/frame/timber.ts'
import type { EndScrews } from '../ramp/screws/end-screws.ts'
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

/** Radius of the ring round a screw's cross, mm. */
export const screwRing = 2

/** Ends of the long way of a timber's rectangle, by its corners, along its face and square to that: its face or its outer end first. */
export const longWay = (corners: readonly Point[], wide: number, deep: number): readonly [Point, Point] => {
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  return deep >= wide
    ? [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
    : [pointBetween(a, d, 0.5), pointBetween(b, c, 0.5)]
}

/** A face farther off the panel's outline than the chord of a curve lies on no line that is sawn, mm. */
const offOutline = 5

/** A line at the middle of the face that carries the skin. */
export const faceMark = (timber: Timber): Drawing => {
  const [a, b, c, d] = timberCorners(timber) as [Point, Point, Point, Point]
  const [face, foot] = [pointBetween(a, b, 0.5), pointBetween(c, d, 0.5)]
  return [stroke('mark', pathOf(face, pointBetween(face, foot, Math.min(1, 8 / timber.depth))), pens.mark)]
}

const ring = [stroke('mark', circle({ x: 0, y: 0 }, screwRing), pens.cross)]

/** A cross in a ring for each of a timber's screws. */
export const ringedCross = (at: Point, angle: number): Drawing => [
  ...cross('mark', at, screwRing, pens.cross, angle),
  shared(affineTranslate(at.x, at.y), 'mark', ring),
]

/** `outline`: of the panel. */
export const timberScrews = (
  timber: Timber,
  { called, number }: TimberName,
  outline: Path,
  { pair }: EndScrews,
): TimberScrews => ({
  called,
  timber: number,
  angle: timber.angle,
  middles: pair.map(({ at }) => at),
  // a stud on the bottom edge has its face within the panel, where no cut line draws it
  within: pathDistance(outline, timber) > offOutline,
})

/** A timber's name and how it lies. */
export const lyingLabel = (timber: Timber, { called, number }: TimberName): PatternLabel => ({
  of: 'timber',
  words: `${called} ${number} ${liesWords(timber)}`,
  shorter: `${called} ${number}`,
  size: letters.word,
  places: [pointBetween(...longWay(timberCorners(timber), timber.width, timber.depth), 0.5)],
  dots: [],
})
