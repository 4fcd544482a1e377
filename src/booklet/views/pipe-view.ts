import { runningDimension } from '../../drafting/dimension/running-dimension.ts'
import { fill, stroke } from '../../drawing/drawing.ts'
import { circle, pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import type { Pipe } from '../../ramp/frame/pipe.ts'
import { type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** The pipe from above with its holes and joints, from its left end; no thinner on paper than can be seen. */
export const pipeView = (pipe: Pipe, outside: number, units: Units, ratio: number): View => {
  const show = (mm: number): string => showLength(mm, units)
  const half = Math.max(1.5, (outside * ratio) / 2)
  const pieces = pipe.pieces.map(({ from, length }) =>
    rectangle(from * ratio, -half, (from + length) * ratio, half),
  )
  const joints = pipe.joints.map(({ at }) => at)
  const stops = [...new Set([...pipe.holes, ...joints, pipe.length])]
    .sort((a, b) => a - b)
    .map((mm) => ({ at: mm * ratio, figure: show(mm) }))
    .filter((stop, i, own) => stop.figure !== own[i - 1]?.figure)
  return viewOf([
    { name: 'pipe', marks: pieces.map((path) => stroke(layer, path, lines.outline)) },
    {
      name: 'axis',
      marks: [stroke(layer, pathOf({ x: -3, y: 0 }, { x: pipe.length * ratio + 3, y: 0 }), lines.axis)],
    },
    {
      name: 'holes',
      marks: pipe.holes.flatMap((at) => {
        const hole = circle({ x: at * ratio, y: 0 }, 0.7)
        return [fill(layer, hole, 1), stroke(layer, hole, lines.thin)]
      }),
    },
    {
      name: 'from the left end',
      marks: runningDimension(
        { zero: { x: 0, y: half + 5 }, angle: 0, stops, side: 1, back: 4.5, upright: true },
        viewStyle,
      ),
    },
  ])
}
