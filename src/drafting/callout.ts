import { type Drawing, type Face, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import type { Box } from '../geometry/bounds.ts'
import { radiansOf } from '../geometry/degrees.ts'
import type { Point } from '../geometry/point.ts'
import { leader } from './leader.ts'
import type { DraftStyle } from './line-types.ts'
import { type Ways, waysAt } from './ways.ts'

export interface Callout {
  /** what is named */
  readonly on: Point
  /** where the leader meets the words, at half the height of the first line */
  readonly at: Point
  readonly lines: readonly string[]
  /** on which side of `at` the words stand */
  readonly words: 'left' | 'right'
  readonly face?: Face
}

const leading = 1.55
/** A level piece of the leader before the words, and the air between, in heights. */
const landing = 0.8
const air = 0.5

/** The box of the words, letters below the line included. */
export const calloutBox = ({ at, lines, words, face = 'regular' }: Callout, { size }: DraftStyle): Box => {
  const wide = Math.max(...lines.map((line) => textWidth(line, size, face)))
  const near = (landing + air) * size
  const [x0, x1] = words === 'right' ? [at.x + near, at.x + near + wide] : [at.x - near - wide, at.x - near]
  const top = at.y + size / 2
  return { x0, x1, y0: top - size - (lines.length - 1) * leading * size - 0.3 * size, y1: top }
}

/** Words beside a drawing with a leader to what they name. */
export const callout = (facts: Callout, style: DraftStyle): Drawing => {
  const { on, at, lines, words, face = 'regular' } = facts
  const { layer, size } = style
  const way = words === 'right' ? 1 : -1
  const box = calloutBox(facts, style)
  return [
    ...leader(on, [at, { x: at.x + way * landing * size, y: at.y }], style),
    ...lines.map((line, i) =>
      text(
        layer,
        { x: words === 'right' ? box.x0 : box.x1, y: at.y - size / 2 - i * leading * size },
        size,
        line,
        { face, align: words === 'right' ? 'left' : 'right' },
      ),
    ),
  ]
}

/** Directions from what is named to the words, degrees; the steep ones last. */
const directions = [35, 145, 60, 120, -35, -145, -60, -120, 80, 100] as const
const distances = [8, 12, 17, 23, 30, 38, 48] as const

/** Places for words around what they name, the nearest first. */
export const calloutWays = (
  on: Point,
  lines: readonly string[],
  style: DraftStyle,
  among: readonly number[] = directions,
): Ways =>
  waysAt(
    distances.flatMap((far) => among.map((degrees) => [far, radiansOf(degrees)] as const)),
    ([far, angle]) => {
      const at = { x: on.x + far * Math.cos(angle), y: on.y + far * Math.sin(angle) }
      return callout({ on, at, lines, words: Math.cos(angle) > 0 ? 'right' : 'left' }, style)
    },
  )
