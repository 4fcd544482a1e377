import { dimension, figureFits } from '../../../drafting/dimension/dimension.ts'
import type { Drawing } from '../../../drawing/drawing.ts'
import { showLength, type Units } from '../../../length.ts'
import type { SolvedQuarter } from '../../../ramp/ramp.ts'
import { bestWay, type Storing } from '../../../ramp/stored.ts'
import { viewStyle } from '../view.ts'

/** From the floor to the first line of dimensions, and from one to the next, mm. */
const [first, next] = [8, 7] as const

/** No shorter length in front or out at the back is told, mm. */
const leastTold = 0.5

/** How far in it stands and out at the back, and the room of both from `left` on: along the floor and up; mm. */
export const nestDimensions = (
  outer: SolvedQuarter,
  storing: Storing,
  left: number,
  units: Units,
  ratio: number,
): Drawing => {
  const { front, out } = bestWay(storing)
  const [long, , high] = storing.stored!
  const show = (mm: number): string => showLength(mm, units)
  const level = (a: number, b: number, row: number): Drawing => {
    const figure = show(b - a)
    return dimension(
      {
        from: { x: a * ratio, y: 0 },
        to: { x: b * ratio, y: 0 },
        angle: 0,
        through: { x: 0, y: -first - row * next },
        figure,
        place: figureFits((b - a) * ratio, figure, viewStyle.size) ? 'between' : 'past-to',
      },
      viewStyle,
    )
  }
  const right = (left + long) * ratio
  return [
    ...(front > leastTold ? level(0, front, 0) : []),
    ...(out > leastTold ? level(outer.length, outer.length + out, 0) : []),
    ...level(left, left + long, 1),
    ...dimension(
      {
        from: { x: right, y: 0 },
        to: { x: right, y: high * ratio },
        angle: Math.PI / 2,
        through: { x: right + first, y: 0 },
        figure: show(high),
      },
      viewStyle,
    ),
  ]
}
