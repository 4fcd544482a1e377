import type { Units } from '../../../design/design.ts'
import { cross } from '../../../drawing/cross.ts'
import { type Drawing, stroke, text } from '../../../drawing/drawing.ts'
import { pathOf } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { showLength } from '../../../length.ts'
import { letters, pens } from '../../../pattern/pens.ts'
import { rulerStep } from '../../ruler/rulers.ts'

/** As long as the room allows, in whole ticks; mm. */
export const rulerLength = (room: number, units: Units): number => {
  const { tick } = rulerStep(units)
  return Math.floor((room - 3) / tick) * tick
}

/** A ruler from zero; figures in the builder's units, crosses at both ends. */
export const longRuler = (from: Point, length: number, down: boolean, units: Units): Drawing => {
  const { tick, figure } = rulerStep(units)
  const count = Math.round(length / tick)
  const place = (along: number, aside: number): Point =>
    down ? { x: from.x + aside, y: from.y + along } : { x: from.x + along, y: from.y + aside }
  const every = Math.round(figure / tick)
  return [
    stroke('datum', pathOf(place(0, 0), place(count * tick, 0)), pens.tick),
    ...cross('datum', place(0, 0), 2, pens.cross),
    ...cross('datum', place(count * tick, 0), 2, pens.cross),
    ...Array.from({ length: count + 1 }, (_, i) => i).flatMap((i): Drawing => {
      const major = i % every === 0 || i === count
      const label = i > 0 && major
      const foot = place(i * tick, 0)
      return [
        stroke('datum', pathOf(foot, place(i * tick, major ? 6 : 3)), pens.tick),
        ...(label
          ? [
              text(
                'datum',
                down ? { x: foot.x + 7, y: foot.y - 1.2 } : { x: foot.x, y: foot.y + 7 },
                letters.small,
                showLength(i * tick, units),
                {
                  align: down ? 'left' : 'middle',
                },
              ),
            ]
          : []),
      ]
    }),
  ]
}
