import { type Drawing, stroke } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'
import { figureLength, figureOver } from './figure.ts'
import { tick } from './tick.ts'

/** A length and how it is said; points on paper, mm. */
export interface Dimension {
  readonly from: Point
  readonly to: Point
  /** direction of the dimension line, radians; the length is measured along it */
  readonly angle: number
  /** a point that the dimension line runs through */
  readonly through: Point
  readonly figure: string
  /** where the figure stands: between the ends, or past one of them where it is too long. `between` unless said */
  readonly place?: FigurePlace
}

export type FigurePlace = 'between' | 'past-to' | 'past-from'

/** A line of two points. */
export type Stroke = readonly [Point, Point]

/** The lines and the words that a dimension is drawn with. */
export interface DimensionParts {
  /** from near each point to just past the dimension line; none where the point lies on it */
  readonly extensions: readonly Stroke[]
  /** from end to end, and on under a figure that stands past one */
  readonly line: Stroke
  readonly ends: Stroke
  readonly figure: TextMark
}

/** Left free beside the outline, and how far an extension line runs past the dimension line; in heights of the figure. */
const gap = 0.4
const past = 0.7

/** Whether the figure stands between the ends. */
export const figureFits = (length: number, figure: string, size: number): boolean =>
  figureLength(figure, size) <= length

/** The foot of a point on the line through `through` in the direction of `angle`. */
const footOn = (p: Point, through: Point, angle: number): Point => {
  const along = (p.x - through.x) * Math.cos(angle) + (p.y - through.y) * Math.sin(angle)
  return pointToward(through, angle, along)
}

export const dimensionParts = (dimension: Dimension, style: DraftStyle): DimensionParts => {
  const { from, to, angle, through, figure, place = 'between' } = dimension
  const { size } = style
  const [a, b] = [footOn(from, through, angle), footOn(to, through, angle)]
  const long = figureLength(figure, size)
  // from an end on, away from the other; along the line where both are one
  const ahead = pointDistance(a, b) > 1e-9 ? pointAngle(a, b) : angle
  const out = place === 'past-from' ? ahead + Math.PI : ahead
  const end = place === 'past-from' ? a : b
  const reach = pointToward(end, out, long)
  const middle =
    place === 'between' ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } : pointToward(end, out, long / 2)
  return {
    extensions: [[from, a] as const, [to, b] as const].flatMap(([p, foot]): Stroke[] => {
      const far = pointDistance(p, foot)
      if (far <= gap * size) return []
      const way = pointAngle(p, foot)
      return [[pointToward(p, way, gap * size), pointToward(foot, way, past * size)]]
    }),
    ends: [a, b],
    line: place === 'between' ? [a, b] : place === 'past-to' ? [a, reach] : [reach, b],
    figure: figureOver(middle, angle, figure, style),
  }
}

/** Thin lines, a tick at each end, the figure over the line, read from below or from the right (ISO 129-1, from memory). */
export const dimension = (facts: Dimension, style: DraftStyle): Drawing => {
  const { extensions, line, ends, figure } = dimensionParts(facts, style)
  return [
    ...[...extensions, line].map(([p, q]) => stroke(style.layer, pathOf(p, q), style.lines.thin)),
    ...ends.flatMap((end) => tick(end, facts.angle, style)),
    figure,
  ]
}
