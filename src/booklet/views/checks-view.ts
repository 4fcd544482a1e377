import { balloon } from '../../drafting/balloon.ts'
import { calloutWays } from '../../drafting/callout.ts'
import { alsoDrawn, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { circle, pathOf } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointBetween, pointDistance, pointToward } from '../../geometry/point.ts'
import { middleRiseLine } from '../../ramp/curve/middle-rise.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { notchCorner } from '../../ramp/side/side.ts'
import { scaled, type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** Shorter lines have their letter beside them, mm on paper. */
const leastLine = 9

const asides = (on: Point, i: number): readonly Drawing[] =>
  [7, 10, 13, 16].flatMap((far) =>
    [-0.4, -0.15, -0.6, 0.1, 0.6, 0.8].map((turn) =>
      balloon(pointToward(on, turn * Math.PI, far), checkLetters[i]!, viewStyle, on),
    ),
  )

export const checkLetters = 'abcdefghij'

/** From where to where each check of the sawn side goes, in the order of the table: chord of the sawn curve, its middle rise, height, length, both diagonals; of a notch from the back edge, from the bottom edge, along its floor; the cut of the back corner. mm of the ramp */
const checkLines = (ramp: SolvedQuarter): readonly (readonly [Point, Point])[] => {
  const { length, transition, coping } = ramp
  const { chamfer } = ramp.design
  const { curve, toe, heights } = transition
  const back = { x: length, y: heights.frame }
  const end = curve.point(ramp.side.curveEnd)
  const wall = coping && notchCorner(coping)
  // where the level lines run, clear of the others
  const [upright, level] = [0.82 * length, 0.06 * heights.frame]
  return [
    [toe, end],
    middleRiseLine(curve, ramp.side.curveEnd),
    [
      { x: upright, y: 0 },
      { x: upright, y: heights.frame },
    ],
    [
      { x: 0, y: level },
      { x: length - chamfer, y: level },
    ],
    [{ x: 0, y: 0 }, back],
    [toe, back],
    ...(wall
      ? ([
          [
            { x: wall.x, y: heights.frame - coping.down / 2 },
            { x: length, y: heights.frame - coping.down / 2 },
          ],
          [
            { x: wall.x, y: 0 },
            { x: wall.x, y: heights.frame - coping.down },
          ],
          ...(coping.seat === 'square' ? [[end, wall] as const] : []),
        ] as const)
      : []),
    ...(chamfer > 0
      ? [
          [
            { x: length - chamfer, y: 0 },
            { x: length, y: chamfer },
          ] as const,
        ]
      : []),
  ]
}

/** One side with the lines that are measured on it, each with the letter of its row; the points between which its curve is sawn. */
export const checksView = (ramp: SolvedQuarter, ratio: number): View => {
  const { toe, curve } = ramp.transition
  const end = curve.point(ramp.side.curveEnd)
  const side = [stroke(layer, pathMap(ramp.side.outline, affineScale(ratio)), lines.outline)]
  const measured = checkLines(ramp).map(([from, to]) => [scaled(from, ratio), scaled(to, ratio)] as const)
  const drawn = measured.map(([from, to]) => stroke(layer, pathOf(from, to), lines.hidden))
  const rings = [toe, end].map((p) => stroke(layer, circle(scaled(p, ratio), 1.2), lines.outline))
  let clearance = alsoDrawn(nothingDrawn, [...side, ...rings], 'thing')
  const names: Drawing[] = []
  for (const ways of [
    calloutWays(scaled(toe, ratio), ['TOE: top of the front edge'], viewStyle, [100, 120, 80, 140]),
    calloutWays(
      scaled(end, ratio),
      [ramp.coping ? 'where the curve meets the notch' : 'LIP: where the curve ends'],
      viewStyle,
      [150, 165, 135, 120],
    ),
  ]) {
    const marks = firstClear(clearance, ways)
    if (!marks) continue
    clearance = alsoDrawn(clearance, marks, 'note')
    names.push(marks)
  }
  const letters = measured.flatMap(([from, to], i): Drawing => {
    const others = alsoDrawn(
      clearance,
      drawn.filter((_, k) => k !== i),
      'thing',
    )
    const middle = pointBetween(from, to, 0.5)
    const ways =
      pointDistance(from, to) < leastLine
        ? asides(middle, i)
        : [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.15, 0.85].map((share) =>
            balloon(pointBetween(from, to, share), checkLetters[i]!, viewStyle),
          )
    // two lines that run close have no room on them
    const marks =
      firstClear(others, [
        ...ways,
        ...[0.35, 0.65, 0.2, 0.8].flatMap((share) => asides(pointBetween(from, to, share), i)),
      ]) ?? ways[0]!
    clearance = alsoDrawn(clearance, marks, 'thing')
    return marks
  })
  return viewOf([
    { name: 'side', marks: side },
    { name: 'lines', marks: drawn },
    { name: 'points', marks: rings },
    { name: 'names', marks: names.flat() },
    { name: 'letters', marks: letters },
  ])
}
