import type { Units } from '../../design/design.ts'
import { text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { inch } from '../../geometry/inch.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import { letters } from '../../pattern/pens.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

/** Distance between ticks, and between those that carry a figure, mm. */
export const rulerStep = (units: Units): { readonly tick: number; readonly figure: number } =>
  units === 'in' ? { tick: inch / 2, figure: 2 * inch } : { tick: 10, figure: 50 }

/** Lengths of a tick with a figure, and of one without, mm. */
const long = 4
const plain = 2

/** The upright ruler stands this far inside the page's left edge, clear of verniers and joint marks, mm. */
const inset = 12

/** A tick, what stands for it where its figure has no room, and the figure, where it has one. */
interface RulerMark {
  readonly tick: Path
  readonly short: Path
  readonly figure: TextMark | null
}

/**
 * A ruler along the snap line and one up the page, reckoned from the corner of the panel's front and bottom edges, not from the page, so
 * that neighbours go on counting; where rows are turned one along them alone, from the `toe`. In the window as the drawing is read.
 */
export const rulerMarks = (tile: Tile, toe: Point, units: Units): readonly RulerMark[] => {
  const cell = tileCell(tile)
  const turned = Math.abs(tile.toWindow[1]) > 1e-9
  const zero = tilePoint(tile, turned ? toe : { x: 0, y: 0 })
  const level = tilePoint(tile, tile.snap[0]).y
  const markAt = (at: Point, toward: number, figure: TextMark | null, major: boolean): RulerMark => {
    const short = pathOf(at, pointToward(at, toward, plain))
    return { tick: major ? pathOf(at, pointToward(at, toward, long)) : short, short, figure }
  }
  const figureAt = (x: number, y: number, mm: number): TextMark =>
    text('note', { x, y }, letters.small, showLength(mm, units), { grey: 0.4 }) as TextMark
  return [
    ...ruler(cell.x0 + 8, cell.x1 - 8, zero.x, units).map(({ at, major, mm }) =>
      markAt(
        { x: at, y: level },
        Math.PI / 2,
        // clear of the figures up the page
        major && at > cell.x0 + inset + 12 ? figureAt(at + 0.8, level + 2.4, mm) : null,
        major,
      ),
    ),
    ...(turned ? [] : ruler(cell.y0 + 8, cell.y1 - 8, zero.y, units)).map(({ at, major, mm }) =>
      markAt(
        { x: cell.x0 + inset, y: at },
        0,
        major && Math.abs(at - level) > 6 ? figureAt(cell.x0 + inset + 5, at - 1.2, mm) : null,
        major,
      ),
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
    return { at: origin + n * tick, major: n % every === 0, mm: n * tick }
  })
}
