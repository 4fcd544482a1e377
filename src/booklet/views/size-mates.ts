import { type Drawing, fill, group, stroke } from '../../drawing/drawing.ts'
import { affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { circle, type Path, rectangle } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { viewStyle } from './view.ts'

/** A grown person in a house door beside a ramp, to feel its size; mm. */
export const matesSize = { width: 830, height: 2040 } as const

const pale = 0.72

/** A bar with round ends between two points. */
const limb = (p: Point, q: Point, wide: number): Path => {
  const angle = Math.atan2(q.y - p.y, q.x - p.x)
  const [a, b] = [angle + Math.PI / 2, angle - Math.PI / 2]
  const start = pointToward(p, a, wide / 2)
  return {
    start,
    pieces: [
      { kind: 'arc', to: pointToward(p, b, wide / 2), centre: p, sweep: Math.PI },
      { kind: 'line', to: pointToward(q, b, wide / 2) },
      { kind: 'arc', to: pointToward(q, a, wide / 2), centre: q, sweep: Math.PI },
      { kind: 'line', to: start },
    ],
    closed: true,
  }
}

const body: readonly Path[] = [
  circle({ x: 0, y: 1590 }, 110),
  limb({ x: -150, y: 1355 }, { x: 150, y: 1355 }, 190),
  rectangle(-165, 850, 165, 1360),
  limb({ x: -215, y: 1350 }, { x: -265, y: 830 }, 100),
  limb({ x: 215, y: 1350 }, { x: 265, y: 830 }, 100),
  limb({ x: -85, y: 900 }, { x: -95, y: 80 }, 160),
  limb({ x: 85, y: 900 }, { x: 95, y: 80 }, 160),
]

/** On the floor, from `left` on; paper mm. */
export const sizeMates = (left: number, ratio: number): Drawing => [
  group(affineThen(affineScale(ratio), affineTranslate(left, 0)), [
    stroke('note', rectangle(0, 0, matesSize.width, matesSize.height), viewStyle.lines.thin),
    stroke('note', circle({ x: 65, y: 1050 }, 28), viewStyle.lines.thin),
    group(
      affineTranslate(matesSize.width / 2, 0),
      body.map((path) => fill('note', path, pale)),
    ),
  ]),
]
