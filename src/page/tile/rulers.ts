import type { Units } from '../../design/design.ts'
import { type Drawing, type Mark, stroke, text } from '../../drawing/drawing.ts'
import { inch } from '../../geometry/inch.ts'
import { pathOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

/** Distance between ticks, and between those that carry a figure, mm. */
export const rulerStep = (units: Units): { readonly tick: number; readonly figure: number } =>
  units === 'in' ? { tick: inch / 2, figure: 2 * inch } : { tick: 10, figure: 50 }

/** The upright ruler stands this far inside the page's left edge, clear of verniers and joint marks, mm. */
const inset = 12

/**
 * A ruler along the snap line and one up the page, reckoned from the corner of the panel's front and bottom edges, not from the page, so
 * that neighbours go on counting; where rows are turned one along them alone, from the `toe`. In the window as the drawing is read.
 */
export const rulerMarks = (tile: Tile, toe: Point, units: Units): Drawing => {
  const cell = tileCell(tile)
  const turned = Math.abs(tile.toWindow[1]) > 1e-9
  const zero = tilePoint(tile, turned ? toe : { x: 0, y: 0 })
  const level = tilePoint(tile, tile.snap[0]).y
  const figure = (at: Point, label: string): Mark => text('note', at, letters.small, label, { grey: 0.4 })
  return [
    ...ruler(cell.x0 + 8, cell.x1 - 8, zero.x, units).flatMap(
      ({ at, major, label }): Drawing => [
        stroke('note', pathOf({ x: at, y: level }, { x: at, y: level + (major ? 4 : 2) }), pens.ruler),
        // clear of the figures up the page
        ...(major && at > cell.x0 + inset + 12 ? [figure({ x: at + 0.8, y: level + 2.4 }, label)] : []),
      ],
    ),
    ...(turned ? [] : ruler(cell.y0 + 8, cell.y1 - 8, zero.y, units)).flatMap(
      ({ at, major, label }): Drawing => [
        stroke(
          'note',
          pathOf({ x: cell.x0 + inset, y: at }, { x: cell.x0 + inset + (major ? 4 : 2), y: at }),
          pens.ruler,
        ),
        ...(major && Math.abs(at - level) > 6
          ? [figure({ x: cell.x0 + inset + 5, y: at - 1.2 }, label)]
          : []),
      ],
    ),
  ]
}

/** Ticks between two places, `origin` being zero; none before it. */
const ruler = (from: number, to: number, origin: number, units: Units) => {
  const { tick, figure } = rulerStep(units)
  const every = Math.round(figure / tick)
  const first = Math.max(0, Math.ceil((from - origin) / tick))
  const count = Math.max(0, Math.floor((to - origin) / tick) - first + 1)
  return Array.from({ length: count }, (_, k) => {
    const n = first + k
    return { at: origin + n * tick, major: n % every === 0, label: showLength(n * tick, units) }
  })
}
