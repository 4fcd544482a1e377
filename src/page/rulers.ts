import type { Units } from '../design/design.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { pathOf } from '../geometry/path.ts'
import { type Point, pointDistance } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import { letters, pens } from '../pattern/pens.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

/** Distance between ticks, and between those that carry a figure, mm. */
export const rulerStep = (units: Units): { readonly tick: number; readonly figure: number } =>
  units === 'in' ? { tick: 12.7, figure: 50.8 } : { tick: 10, figure: 50 }

/** Nothing else lies this near to the middle of a cross, mm. */
const crossRoom = 7

/**
 * Rulers along the lower and the left edge of what a page keeps, reckoned along the rows from the pattern's origin, not
 * from the page; so neighbours go on counting.
 */
export const rulerMarks = (tile: Tile, units: Units): Drawing => {
  const cell = tileCell(tile)
  const zero = tilePoint(tile, { x: 0, y: 0 })
  const crosses = tile.joints.flatMap((joint) => joint.crosses.map((p) => tilePoint(tile, p)))
  const { tick, figure } = rulerStep(units)
  const every = Math.round(figure / tick)
  const axis = (
    from: number,
    to: number,
    origin: number,
    place: (at: number, depth: number) => Point,
    turned: boolean,
  ) => {
    const marks: Drawing[] = []
    for (let i = Math.ceil((from - origin) / tick); origin + i * tick <= to; i++) {
      const at = origin + i * tick
      const foot = place(at, 0)
      if (crosses.some((p) => pointDistance(p, foot) < crossRoom)) continue
      const major = i % every === 0
      marks.push([stroke('note', pathOf(foot, place(at, major ? 4 : 2)), pens.ruler)])
      if (major && at > from + 4 && at < to - 8)
        marks.push(
          [
            text(
              'note',
              turned ? { x: 5, y: -1.2 } : { x: 1, y: 2.2 },
              letters.small,
              showLength(i * tick, units),
              { grey: 0.4 },
            ),
          ].map((mark) => (mark.kind === 'text' ? { ...mark, at: addTo(foot, mark.at) } : mark)),
        )
    }
    return marks.flat()
  }
  return [
    ...axis(cell.x0, cell.x1, zero.x, (at, depth) => ({ x: at, y: cell.y0 + depth }), false),
    ...axis(cell.y0, cell.y1, zero.y, (at, depth) => ({ x: cell.x0 + depth, y: at }), true),
  ]
}

const addTo = (p: Point, q: Point): Point => ({ x: p.x + q.x, y: p.y + q.y })
