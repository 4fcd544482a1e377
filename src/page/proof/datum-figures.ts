import type { Units } from '../../design/design.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { letters } from '../../pattern/pens.ts'

/** Side of a cross: to the right or left of it, below or above. */
export type Beside = readonly [1 | -1, 1 | -1]

export const besides: readonly Beside[] = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]

/** Half the room of a cross, and the height of its figures, mm. */
export const arm = 8
export const figuresHeight = 14

/** A cross at a point of the window, with its figures to one side of it. */
export const besideBox = (p: Point, across: number, up: number, width: number): Box => ({
  x0: across > 0 ? p.x - arm : p.x - width,
  x1: across > 0 ? p.x + width : p.x + arm,
  y0: up > 0 ? p.y - arm : p.y - figuresHeight,
  y1: up > 0 ? p.y + figuresHeight : p.y + arm,
})

/**
 * The three figures of a datum, in the builder's units: from the two edges that he has before the first cut, and straight from
 * where they meet, which tells whether they are square.
 */
export const datumFigures = (at: Point, units: Units): readonly string[] => [
  `${showLength(at.x, units)} from the front edge`,
  `${showLength(at.y, units)} from the bottom edge`,
  `${showLength(Math.hypot(at.x, at.y), units)} from their corner`,
]

/** Room from the middle of the cross to the end of its figures, mm. */
export const figuresWidth = (at: Point, units: Units): number =>
  arm + Math.max(...datumFigures(at, units).map((line) => textWidth(line, letters.small, 'regular')))

/** Between which the figures of all crosses of a pattern need room from their middles, mm. */
export interface Widths {
  readonly least: number
  readonly most: number
}

export const widthsOf = ({ length, height }: Pattern, units: Units): Widths => {
  const widthFrom = (figure: string): number =>
    arm + textWidth(`${figure} from the bottom edge`, letters.small, 'regular')
  // none has more digits than the longest length and its finest part
  const most = `${showLength(Math.hypot(length, height), units)} 15/16`.length
  return { least: widthFrom(''), most: widthFrom('0'.repeat(most)) }
}
