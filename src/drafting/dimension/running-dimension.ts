import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'
import { readableAngle } from './figure.ts'
import { spread } from './spread.ts'
import { zeroMark } from './tick.ts'

/** Lengths from one zero along a line on paper, mm. */
export interface RunningDimension {
  readonly zero: Point
  /** direction in which the lengths grow, radians */
  readonly angle: number
  /** in rising order: how far on paper, and how it is said */
  readonly stops: readonly { readonly at: number; readonly figure: string }[]
  /** on which side of the line the figures stand: 1 to the left of its direction, -1 to the right */
  readonly side: 1 | -1
  /** from each point back over the line towards what is measured; 0 for none */
  readonly back?: number
  /** of a level line: figures that are read from below as long as none moves farther than `farthest` for it. Along their strokes unless said */
  readonly upright?: boolean
  /** along the line, the zero's first: where the figures stand that others on the same side have to keep off. Spread over their own points unless said */
  readonly places?: readonly number[]
}

/** From one figure to the next, and from the line to where a stroke leans over to its figure; in heights of the figure. */
export const figuresApart = 1.5
const straight = 0.8
const leaning = 1.6

/** A head takes so much of its line, in heights of the figure. */
const head = 1

/** Between figures that stand upright, in heights; and how far one may move for that, mm. */
const air = 1.2
const farthest = 12

/** Places of figures that are read from below; null where they are too many for that. */
const uprightPlaces = (stops: RunningDimension['stops'], size: number): readonly number[] | null => {
  const half = stops.map(({ figure }) => textWidth(figure, size, 'regular') / 2)
  const apart = half.slice(1).map((own, i) => own + half[i]! + air * size)
  const places = spread(
    stops.map(({ at }) => at),
    apart,
  )
  return places.every((place, i) => Math.abs(place - stops[i]!.at) <= farthest) ? places : null
}

/** How far the longest figure reaches from the line, mm. */
export const runningReach = (figures: readonly string[], size: number): number =>
  (straight + leaning + 0.5) * size +
  Math.max(0, ...figures.map((figure) => textWidth(figure, size, 'regular')))

/**
 * Running dimensions by ISO 129-1 (from memory): a ring at the zero, a head at each point, the figure at the end of its stroke and
 * along it. Strokes lean apart where points lie closer than figures can.
 */
export const runningDimension = (
  { zero, angle, stops, side, back = 0, upright = false, places: told }: RunningDimension,
  style: DraftStyle,
): Drawing => {
  const { layer, size, lines } = style
  const last = stops.at(-1)
  if (!last) return []
  const across = angle + (side * Math.PI) / 2
  const at = (along: number, up: number): Point => pointToward(pointToward(zero, angle, along), across, up)
  const figures = [{ at: 0, figure: '0' }, ...stops]
  const level = upright ? uprightPlaces(figures, size) : null
  const places =
    level ??
    told ??
    spread(
      figures.map((stop) => stop.at),
      figuresApart * size,
    )
  const turn = readableAngle(across)
  // words that run away from the line begin at it, the others end there
  const away = Math.cos(turn - across) > 0
  const end = (straight + leaning) * size
  return [
    stroke(layer, pathOf(zero, at(last.at, 0)), lines.thin),
    ...zeroMark(zero, style),
    // heads that would lie on the ring or on each other are a blot: the stroke alone tells the point
    ...stops.flatMap((stop, i) =>
      stop.at - (stops[i - 1]?.at ?? 0) < head * size
        ? []
        : arrowHead(layer, at(stop.at, 0), angle, 0.8 * size),
    ),
    ...figures.flatMap((stop, i): Drawing => {
      const place = places[i]!
      // the middle of the capitals on the stroke
      const foot = level
        ? at(place, end + (side === 1 ? 0.4 : 1.4) * size)
        : pointToward(at(place, end + 0.3 * size), turn - Math.PI / 2, size / 2)
      return [
        stroke(
          layer,
          i === 0
            ? pathOf(at(0, 0.4 * size), at(0, straight * size), at(place, end))
            : pathOf(at(stop.at, -back), at(stop.at, straight * size), at(place, end)),
          lines.thin,
        ),
        level
          ? text(layer, foot, size, stop.figure, { align: 'middle' })
          : text(layer, foot, size, stop.figure, { angle: turn, align: away ? 'left' : 'right' }),
      ]
    }),
  ]
}
