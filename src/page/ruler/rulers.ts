import type { Units } from '../../design/design.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import type { TextMark } from '../../drawing/text-box.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Affine, affineApply } from '../../geometry/affine.ts'
import { inch } from '../../geometry/inch.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { isRowTurned, type Tile, tilePoint } from '../tile/tile.ts'

/** Distance between ticks, and between those that carry a figure, mm. */
export const rulerStep = (units: Units): { readonly tick: number; readonly figure: number } =>
  units === 'in' ? { tick: inch / 2, figure: 2 * inch } : { tick: 10, figure: 50 }

/** Lengths of a tick with a figure, and of one without, mm. */
const long = 4
export const plainTick = 2

/** The upright ruler stands this far inside the page's left edge, clear of verniers and joint marks, mm; and farther where it loses figures there. */
const inset = 12
const insets = [inset, 17, 22, 27, 32, 37, 42, 47, 52]

/** Between a tick and the figure beside it, and from the ruler to that figure, mm. */
const beside = 0.8
const above = 2.4

/** Quieter than words, and whole in the dots of a black and white printer. */
const figureGrey = 0.2

/** What a figure off all timbers is worth besides: not as much as one more figure. */
const inTimber = 0.1

/** A long tick and its figure. */
interface Figured {
  readonly tick: Path
  readonly figure: TextMark
}

/** A tick, and in how many places a long one with a figure may stand for it, the usual one first. */
interface RulerMark {
  /** takes a tick at 0,0 of a ruler along x to it */
  readonly frame: Affine
  readonly places: number
  readonly figured: (place: number) => Figured
}

/** What is drawn of one tick: nothing where it has no room. */
export interface RulerTick {
  readonly marks: Drawing
  /** of a plain one: what takes a tick at 0,0 of a ruler along x to it */
  readonly frame?: Affine
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
export const rulerMarks = (tile: Tile, toe: Point, units: Units, room: RulerRoom): readonly RulerTick[] => {
  const cell = tile.kept
  const turned = isRowTurned(tile)
  const zero = tilePoint(tile, turned ? toe : { x: 0, y: 0 })
  const level = tilePoint(tile, tile.snap[0]).y
  const along = ruler(cell.x0 + 8, cell.x1 - 8, zero.x, units).map((one) => alongMark(one, level))
  const heights = turned ? [] : ruler(cell.y0 + 8, cell.y1 - 8, zero.y, units)
  const inside = uprightOff(
    insets.filter((one) => one === inset || cell.x0 + 2 * one < cell.x1),
    heights.filter((one) => isRead(one, level)),
    (one, off) => uprightFigure(one, cell.x0 + off),
    room,
  )
  const upright = heights.map((one) => uprightMark(one, cell.x0 + inside, level))
  return [...along, ...upright].map((mark) => drawn(mark, room))
}

/** A tick that is not drawn. */
export const noTick: RulerTick = { marks: [] }

const drawn = (mark: RulerMark, { isFigured, isOffTimber, isFree }: RulerRoom): RulerTick => {
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
  if (kept) return { marks: [stroke('note', kept.tick, pens.ruler), kept.figure] }
  // a long tick without its figure would be counted wrongly
  const plain = tickOf(mark.frame, plainTick)
  return isFree(plain) ? { marks: [stroke('note', plain, pens.ruler)], frame: mark.frame } : noTick
}

/** How far inside the page's edge it loses no figure and has none in a timber, the first such, else the fewest of both. */
const uprightOff = (
  offs: readonly number[],
  wanted: readonly Tick[],
  figureOf: (tick: Tick, off: number) => Figured,
  { isFigured, isOffTimber }: RulerRoom,
): number => {
  let best = inset
  let most = -1
  for (const off of offs) {
    let worth = 0
    let offTimber = 0
    for (const one of wanted) {
      const figured = figureOf(one, off)
      if (!isFigured(figured)) continue
      worth++
      if (isOffTimber(figured)) offTimber++
    }
    worth += inTimber * offTimber
    if (worth > most) {
      most = worth
      best = off
    }
    if (worth === (1 + inTimber) * wanted.length) break
  }
  return best
}

/** A tick of a ruler: where it lies along it, in the window, mm, and its figure; null where it has none. */
interface Tick {
  readonly at: number
  readonly words: string | null
}

const tickOf = (frame: Affine, length: number): Path =>
  pathOf(affineApply(frame, { x: 0, y: 0 }), affineApply(frame, { x: 0, y: length }))

const figureAt = (x: number, y: number, words: string): TextMark =>
  text('note', { x, y }, letters.small, words, { grey: figureGrey })

/** Right and left of its tick, over and under the line. */
const sides = [
  { isRight: true, up: 1 },
  { isRight: false, up: 1 },
  { isRight: true, up: -1 },
  { isRight: false, up: -1 },
] as const

const alongMark = ({ at, words }: Tick, level: number): RulerMark => {
  const frame: Affine = [1, 0, 0, 1, at, level]
  return {
    frame,
    places: words === null ? 0 : sides.length,
    figured: (place) => {
      const { isRight, up } = sides[place]!
      return {
        tick: tickOf(frame, up * long),
        figure: figureAt(
          isRight ? at + beside : at - beside - textWidth(words!, letters.small, 'regular'),
          up > 0 ? level + above : level - above - letters.small,
          words!,
        ),
      }
    },
  }
}

/** Whether it has a figure, which beside the snap line would be read with the words there. */
const isRead = ({ at, words }: Tick, level: number): boolean => words !== null && Math.abs(at - level) > 6

const uprightFrame = ({ at }: Tick, x: number): Affine => [0, 1, 1, 0, x, at]

const uprightFigure = (tick: Tick, x: number): Figured => ({
  tick: tickOf(uprightFrame(tick, x), long),
  figure: figureAt(x + long + 1, tick.at - letters.small / 2, tick.words!),
})

const uprightMark = (tick: Tick, x: number, level: number): RulerMark => ({
  frame: uprightFrame(tick, x),
  places: isRead(tick, level) ? 1 : 0,
  figured: () => uprightFigure(tick, x),
})

/** Ticks between two places, `origin` being zero; none before it. */
const ruler = (from: number, to: number, origin: number, units: Units): readonly Tick[] => {
  const { tick, figure } = rulerStep(units)
  const every = Math.round(figure / tick)
  const first = Math.max(0, Math.ceil((from - origin) / tick))
  const count = Math.max(0, Math.floor((to - origin) / tick) - first + 1)
  return Array.from({ length: count }, (_, k) => {
    const n = first + k
    return { at: origin + n * tick, words: n % every === 0 ? showLength(n * tick, units) : null }
  })
}
