import type { Units } from '../../design/design.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { inch } from '../../geometry/inch.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { type Tile, tileCell, tilePoint } from './tile.ts'

/** Distance between ticks, and between those that carry a figure, mm. */
export const rulerStep = (units: Units): { readonly tick: number; readonly figure: number } =>
  units === 'in' ? { tick: inch / 2, figure: 2 * inch } : { tick: 10, figure: 50 }

/** Lengths of a tick with a figure, and of one without, mm. */
const long = 4
const plain = 2

/** The upright ruler stands this far inside the page's left edge, clear of verniers and joint marks, mm; and farther where it loses figures there. */
const inset = 12
const insets = [inset, 17, 22, 27, 32, 37, 42, 47, 52]

/** Between a tick and the figure beside it, and from the ruler to that figure, mm. */
const beside = 0.8
const above = 2.4

/** What a figure off all timbers is worth besides: not as much as one more figure. */
const inTimber = 0.1

/** A long tick and its figure. */
interface Figured {
  readonly tick: Path
  readonly figure: TextMark
}

/** A tick, and in how many places a long one with a figure may stand for it, the usual one first. */
interface RulerMark {
  readonly plain: Path
  readonly places: number
  readonly figured: (place: number) => Figured
}

/** What a ruler asks of a page. */
export interface RulerRoom {
  /** whether a figure and its tick have room, and whether that lies on no timber */
  readonly isFigured: (mark: Figured) => boolean
  readonly isOffTimber: (mark: Figured) => boolean
  readonly isFree: (tick: Path) => boolean
}

/**
 * A ruler along the snap line and one up the page, reckoned from the corner of the panel's front and bottom edges, not from the page, so
 * that neighbours go on counting; where rows are turned one along them alone, from the `toe`. A tick stands with its figure, on either side of
 * it and of the line, or short where that has no room; the upright one where it loses the fewest. In the window as the drawing is read.
 */
export const rulerMarks = (tile: Tile, toe: Point, units: Units, room: RulerRoom): readonly Drawing[] => {
  const cell = tileCell(tile)
  const turned = Math.abs(tile.toWindow[1]) > 1e-9
  const zero = tilePoint(tile, turned ? toe : { x: 0, y: 0 })
  const level = tilePoint(tile, tile.snap[0]).y
  const along = ruler(cell.x0 + 8, cell.x1 - 8, zero.x, units).map((one) => alongMark(one, level, units))
  const heights = turned ? [] : ruler(cell.y0 + 8, cell.y1 - 8, zero.y, units)
  const upright = uprightRuler(
    insets.filter((off) => off === inset || cell.x0 + 2 * off < cell.x1),
    (off) => heights.map((one) => uprightMark(one, cell.x0 + off, level, units)),
    room,
  )
  return [...along, ...upright].map((mark) => drawn(mark, room))
}

const drawn = (mark: RulerMark, { isFigured, isOffTimber, isFree }: RulerRoom): Drawing => {
  let kept: Figured | undefined
  // only so many are set as are asked about
  for (let place = 0; place < mark.places; place++) {
    const figured = mark.figured(place)
    if (!isFigured(figured)) continue
    kept ??= figured
    if (!isOffTimber(figured)) continue
    kept = figured
    break
  }
  if (kept) return [stroke('note', kept.tick, pens.ruler), kept.figure]
  // a long tick without its figure would be counted wrongly
  return isFree(mark.plain) ? [stroke('note', mark.plain, pens.ruler)] : []
}

/** The first of its places in which it loses no figure and has none in a timber, else the fewest of both. */
const uprightRuler = (
  offs: readonly number[],
  marksAt: (off: number) => readonly RulerMark[],
  { isFigured, isOffTimber }: RulerRoom,
): readonly RulerMark[] => {
  let best: readonly RulerMark[] = []
  let most = -1
  for (const off of offs) {
    const marks = marksAt(off)
    const wanted = marks.filter(({ places }) => places > 0)
    const figured = wanted.map((mark) => mark.figured(0)).filter(isFigured)
    const worth = figured.length + inTimber * figured.filter(isOffTimber).length
    if (worth > most) {
      most = worth
      best = marks
    }
    if (worth === (1 + inTimber) * wanted.length) break
  }
  return best
}

/** A tick of a ruler: where it lies along it, in the window and from the ruler's zero, mm. */
interface Tick {
  readonly at: number
  readonly major: boolean
  readonly mm: number
}

const figureAt = (x: number, y: number, words: string): TextMark =>
  text('note', { x, y }, letters.small, words, { grey: 0.4 }) as TextMark

/** Right and left of its tick, over and under the line. */
const sides = [
  { isRight: true, up: 1 },
  { isRight: false, up: 1 },
  { isRight: true, up: -1 },
  { isRight: false, up: -1 },
] as const

const alongMark = ({ at, major, mm }: Tick, level: number, units: Units): RulerMark => {
  const foot = { x: at, y: level }
  const tick = (length: number): Path => pathOf(foot, pointToward(foot, Math.PI / 2, length))
  return {
    plain: tick(plain),
    places: major ? sides.length : 0,
    figured: (place) => {
      const { isRight, up } = sides[place]!
      const words = showLength(mm, units)
      return {
        tick: tick(up * long),
        figure: figureAt(
          isRight ? at + beside : at - beside - textWidth(words, letters.small, 'regular'),
          up > 0 ? level + above : level - above - letters.small,
          words,
        ),
      }
    },
  }
}

const uprightMark = ({ at, major, mm }: Tick, x: number, level: number, units: Units): RulerMark => {
  const tick = (length: number): Path => pathOf({ x, y: at }, { x: x + length, y: at })
  return {
    plain: tick(plain),
    // beside the snap line it would be read with its words
    places: major && Math.abs(at - level) > 6 ? 1 : 0,
    figured: () => ({
      tick: tick(long),
      figure: figureAt(x + long + 1, at - letters.small / 2, showLength(mm, units)),
    }),
  }
}

/** Ticks between two places, `origin` being zero; none before it. */
const ruler = (from: number, to: number, origin: number, units: Units): readonly Tick[] => {
  const { tick, figure } = rulerStep(units)
  const every = Math.round(figure / tick)
  const first = Math.max(0, Math.ceil((from - origin) / tick))
  const count = Math.max(0, Math.floor((to - origin) / tick) - first + 1)
  return Array.from({ length: count }, (_, k) => {
    const n = first + k
    return { at: origin + n * tick, major: n % every === 0, mm: n * tick }
  })
}
