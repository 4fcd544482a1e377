import { calloutWays } from '../../drafting/callout.ts'
import { dimension, type FigurePlace, figureFits } from '../../drafting/dimension/dimension.ts'
import { waysAt } from '../../drafting/ways.ts'
import { stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { circle, pathOf, segmentsPath } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import type { SolvedCoping } from '../../ramp/side/coping.ts'
import { notchSizes } from '../../ramp/side/notch-sizes.ts'
import { notchCorner } from '../../ramp/side/side.ts'
import { annotated, type Remark, type Window, within } from './detail.ts'
import { scaled, type View, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** How far the detail reaches around the notch, mm of the ramp. */
const around = { before: 60, behind: 60, below: 45, above: 6 } as const

export const notchWindow = (
  { transition, side }: SolvedQuarter,
  coping: SolvedCoping,
  ratio: number,
): Window => {
  const wall = notchCorner(coping)
  const mouth = transition.curve.point(side.curveEnd)
  return {
    ratio,
    box: {
      x0: Math.min(mouth.x, transition.lip.x) - around.before,
      x1: Math.max(wall.x, transition.lip.x) + around.behind,
      y0: wall.y - around.below,
      y1: transition.heights.frame + around.above,
    },
  }
}

/** The side at its notch: the line to saw, and dashed where curve and top line met before, at the point LIP that its depth along is measured from. */
export const notchView = (ramp: SolvedQuarter, coping: SolvedCoping, units: Units, ratio: number): View => {
  const window = notchWindow(ramp, coping, ratio)
  const { curve, lip } = ramp.transition
  const map = affineScale(ratio)
  const wall = notchCorner(coping)
  const top = { x: wall.x, y: ramp.transition.heights.frame }
  const uncut = segmentsPath(curve.segments(ramp.side.curveEnd, curve.lip))
  const cut = within(window, [stroke(layer, pathMap(ramp.side.outline, map), lines.outline)])
  return annotated(
    [
      { name: 'cut', marks: cut },
      {
        name: 'before it was cut',
        marks: [
          stroke(layer, pathMap(uncut, map), lines.hidden),
          stroke(layer, pathOf(scaled(lip, ratio), scaled(top, ratio)), lines.hidden),
        ],
      },
      { name: 'lip', marks: [stroke(layer, circle(scaled(lip, ratio), 1.2), lines.outline)] },
    ],
    (remark) => sizeNotes(remark, ramp, coping, units, ratio, top),
  )
}

/** Where a figure may stand: between its ends only where it fits. */
const placesOf = (length: number, figure: string): readonly FigurePlace[] => [
  ...(figureFits(length, figure, viewStyle.size) ? (['between'] as const) : []),
  'past-from',
  'past-to',
]

const sizeNotes = (
  remark: Remark,
  ramp: SolvedQuarter,
  coping: SolvedCoping,
  units: Units,
  ratio: number,
  top: Point,
): void => {
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const show = (mm: number): string => showLength(mm, units)
  const { lip } = ramp.transition
  const wall = notchCorner(coping)
  const [onWall, onLip, corner] = [scaled(top, ratio), scaled(lip, ratio), scaled(wall, ratio)]
  const { floor } = notchSizes(ramp.transition, coping, ramp.length)
  /** a size from end to end, its line so far off on the one or the other side */
  const size = (
    name: string,
    [mm, figure]: readonly [number, string],
    from: Point,
    to: Point,
    angle: number,
    off: readonly Point[],
  ): void =>
    remark(
      name,
      waysAt(
        placesOf(mm * ratio, figure).flatMap((place) => off.map((by) => [place, by] as const)),
        ([place, by]) => {
          const through = { x: to.x + by.x, y: to.y + by.y }
          return dimension({ from, to, angle, through, figure, place }, viewStyle)
        },
      ),
    )
  const level = (ups: readonly number[]): readonly Point[] => ups.map((y) => ({ x: 0, y }))
  size('along', [coping.along, fine(coping.along)], onLip, onWall, 0, level([7, 10, 14]))
  size(
    'down',
    [coping.down, fine(coping.down)],
    onWall,
    corner,
    Math.PI / 2,
    [8, 12, 16].map((x) => ({ x, y: 0 })),
  )
  if (floor !== null) {
    const mouth = { x: corner.x - floor * ratio, y: corner.y }
    size('floor', [floor, show(floor)], mouth, corner, 0, level([-7, -11, -15]))
  }
  remark(
    'lip',
    calloutWays(onLip, ['LIP: on the pages, and on', 'the wood until you saw'], viewStyle, [150, 165, 135]),
  )
  remark(
    'curve',
    calloutWays(
      pointToward(
        scaled(ramp.transition.curve.point(ramp.side.curveEnd), ratio),
        ramp.transition.lipAngle,
        -10,
      ),
      ['the curve'],
      viewStyle,
      [150, 165, 135, 120],
    ),
  )
  if (coping.seat === 'square')
    remark('hole', calloutWays(corner, ['drill this corner first'], viewStyle, [-35, -20, -50, -65]))
}
