import type { Drawing } from '../../drawing/drawing.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Box, boxGrow, boxOverlaps, boxUnion, pointsBounds } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import type { DraftStyle } from '../line-types.ts'
import {
  type Dimension,
  type DimensionParts,
  dimension,
  dimensionParts,
  type FigurePlace,
  figureFits,
  type Stroke,
} from './dimension.ts'

export type Side = 'below' | 'above' | 'left' | 'right'

/** A level or upright length that is to stand outside the outline; points on paper, mm. */
export interface Measure {
  readonly from: Point
  readonly to: Point
  readonly figure: string
  /** the sides that it may stand on, the best first: both of `below` and `above`, or both of `left` and `right`, or one */
  readonly sides: readonly Side[]
}

export interface PlacedMeasure {
  readonly measure: Measure
  readonly side: Side
  /** 1 is the one next to the outline */
  readonly row: number
  readonly marks: Drawing
}

export interface DimensionGroup {
  /** in the order of the measures; null where no place keeps it off the others */
  readonly placed: readonly (PlacedMeasure | null)[]
  /** around the outline and all that was placed */
  readonly box: Box
}

/** Of the first row from the outline, and from one row to the next, in heights of the figure. */
const first = 3.4
const pitch = 2.8
const mostRows = 8

/** Words keep this far off lines, mm. */
const clear = 0.3

interface Taken {
  readonly parts: DimensionParts
  readonly words: Box
}

/**
 * Dimensions in rows around an outline, the shorter ones nearer, such that no dimension line is crossed, no words lie on a line
 * or on other words, nor on the boxes of `keepOff`.
 */
export const groupDimensions = (
  measures: readonly Measure[],
  outline: Box,
  style: DraftStyle,
  keepOff: readonly Box[] = [],
): DimensionGroup => {
  const order = measures
    .map((measure, i) => ({ measure, i, length: lengthOf(measure) }))
    .sort((a, b) => a.length - b.length || a.i - b.i)
  const taken: Taken[] = []
  const placed: (PlacedMeasure | null)[] = measures.map(() => null)
  for (const { measure, i } of order)
    for (const candidate of candidates(measure, outline, style)) {
      const parts = dimensionParts(candidate.dimension, style)
      const own: Taken = {
        parts,
        words: boxGrow(pointsBounds(textCorners(parts.figure, affineIdentity)), clear),
      }
      if (
        keepOff.some(
          (box) => boxOverlaps(box, own.words) || strokesOf(parts).some((s) => strokeMeets(s, box)),
        )
      )
        continue
      if (taken.some((other) => meet(own, other))) continue
      taken.push(own)
      const { side, row } = candidate
      placed[i] = { measure, side, row, marks: dimension(candidate.dimension, style) }
      break
    }
  const box = taken.reduce(
    (all, { parts, words }) => boxUnion(boxUnion(all, words), pointsBounds(strokesOf(parts).flat())),
    outline,
  )
  return { placed, box }
}

const level = (side: Side): boolean => side === 'below' || side === 'above'

const lengthOf = ({ from, to, sides }: Measure): number =>
  level(sides[0]!) ? Math.abs(to.x - from.x) : Math.abs(to.y - from.y)

interface Candidate {
  readonly side: Side
  readonly row: number
  readonly dimension: Dimension
}

/** Rows from the outline outward on the best side, then on the next; the figure between the ends where it fits. */
const candidates = function* (measure: Measure, outline: Box, { size }: DraftStyle): Generator<Candidate> {
  const { from, to, figure, sides } = measure
  const places: readonly FigurePlace[] = figureFits(lengthOf(measure), figure, size)
    ? ['between']
    : ['past-to', 'past-from']
  for (const side of sides)
    for (let row = 1; row <= mostRows; row++) {
      const away = (first + (row - 1) * pitch) * size
      const through = {
        x: side === 'left' ? outline.x0 - away : outline.x1 + away,
        y: side === 'below' ? outline.y0 - away : outline.y1 + away,
      }
      const angle = level(side) ? 0 : Math.PI / 2
      for (const place of places) yield { side, row, dimension: { from, to, angle, through, figure, place } }
    }
}

const strokesOf = ({ extensions, line }: DimensionParts): readonly Stroke[] => [...extensions, line]

/** Whether two dimensions get in each other's way. Ends may touch; extension lines may lie on or cross each other. */
const meet = (a: Taken, b: Taken): boolean =>
  boxOverlaps(a.words, b.words) ||
  strokesOf(a.parts).some((s) => strokeMeets(s, b.words)) ||
  strokesOf(b.parts).some((s) => strokeMeets(s, a.words)) ||
  strokesOf(a.parts).some((s) => crosses(b.parts.line, s)) ||
  strokesOf(b.parts).some((s) => crosses(a.parts.line, s))

/** Level and upright strokes as boxes. */
const strokeMeets = ([p, q]: Stroke, box: Box): boolean =>
  Math.min(p.x, q.x) < box.x1 &&
  Math.max(p.x, q.x) > box.x0 &&
  Math.min(p.y, q.y) < box.y1 &&
  Math.max(p.y, q.y) > box.y0

/** Whether a stroke touches a dimension line between its ends; both are level or upright. mm */
const crosses = (line: Stroke, other: Stroke): boolean => {
  const slack = 0.05
  const box = pointsBounds(line)
  const along = box.x1 - box.x0 > box.y1 - box.y0
  return strokeMeets(
    other,
    along
      ? { x0: box.x0 + slack, x1: box.x1 - slack, y0: box.y0 - slack, y1: box.y1 + slack }
      : { x0: box.x0 - slack, x1: box.x1 + slack, y0: box.y0 + slack, y1: box.y1 - slack },
  )
}
