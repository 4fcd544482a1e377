import type { Units } from '../design/design.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { paragraph } from '../drawing/paragraph.ts'
import type { Box } from '../geometry/bounds.ts'
import { pathOf, rectangle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { showLength } from '../length.ts'
import { letters, pens } from '../pattern/pens.ts'
import { rulerStep } from './rulers.ts'

/** Side of the test square where the page has room for it, mm. */
const squareSizes = [150, 100, 50] as const

export interface SquarePage {
  readonly drawing: Drawing
  /** lower left corner of the square on the page, ideal mm */
  readonly corner: Point
  readonly side: number
}

/** The page that proves the printer: a true square and two long rulers; ideal page mm. */
export const squarePage = (window: Box, units: Units, set: string): SquarePage => {
  const [width, height] = [window.x1 - window.x0, window.y1 - window.y0]
  const side = squareSizes.find((s) => s + 24 <= width && s + 70 <= height) ?? 50
  const size = width < 120 ? letters.small : 3.2
  const style = { layer: 'note', width: width - 4, size } as const
  const sideWords = units === 'in' ? `${side} mm (${showLength(side, 'in', { unit: true })})` : `${side} mm`
  const title = paragraph({ x: window.x0, y: window.y1 }, 'Check the printer first', {
    ...style,
    size: letters.word,
    face: 'bold',
  })
  const what = paragraph(
    { x: window.x0, y: title.bottom },
    `Measure both sides of this square with a steel rule, from mark to mark: each must be ${sideWords}.`,
    style,
  )
  const remedy = paragraph(
    { x: window.x0, y: what.bottom },
    `If one is off by more than ${units === 'in' ? '1/64 in' : 'half a millimetre'}: print at 100 %, never "fit to page", one-sided, and measure again; then try another printer.`,
    style,
  )
  const corner = {
    x: window.x0 + 18,
    y: Math.max(window.y0 + 22, (remedy.bottom + window.y0 + 16 - side) / 2),
  }
  const square = rectangle(corner.x, corner.y, corner.x + side, corner.y + side)
  const middle = { x: corner.x + side / 2, y: corner.y + side / 2 }
  return {
    corner,
    side,
    drawing: [
      ...title.marks,
      ...what.marks,
      ...remedy.marks,
      stroke('mark', square, { width: 0.35 }),
      stroke('datum', pathOf(corner, { x: corner.x + side, y: corner.y + side }), pens.tick),
      stroke(
        'datum',
        pathOf({ x: corner.x + side, y: corner.y }, { x: corner.x, y: corner.y + side }),
        pens.tick,
      ),
      text('note', { x: middle.x, y: corner.y + side - 8 }, letters.word, `ACROSS ${sideWords}`, {
        align: 'middle',
        face: 'bold',
      }),
      text('note', { x: corner.x + 8, y: middle.y }, letters.word, `DOWN ${sideWords}`, {
        align: 'middle',
        angle: Math.PI / 2,
        face: 'bold',
      }),
      text('note', { x: middle.x, y: corner.y + 6 }, letters.small, `set ${set}`, { align: 'middle' }),
      ...longRuler({ x: window.x0 + 2, y: window.y0 + 2 }, width - 4, false, units),
      ...longRuler({ x: window.x0 + 2, y: window.y0 + 2 }, remedy.bottom - window.y0 - 6, true, units),
    ],
  }
}

/** A ruler from zero as long as the page allows; figures in the builder's units, crosses at both ends. */
const longRuler = (from: Point, room: number, down: boolean, units: Units): Drawing => {
  const { tick, figure } = rulerStep(units)
  const count = Math.floor(room / tick)
  const place = (along: number, beside: number): Point =>
    down ? { x: from.x + beside, y: from.y + along } : { x: from.x + along, y: from.y + beside }
  const every = Math.round(figure / tick)
  const marks: Drawing[] = [[stroke('datum', pathOf(place(0, 0), place(count * tick, 0)), pens.mark)]]
  for (let i = 0; i <= count; i++) {
    const major = i % every === 0 || i === count
    marks.push([stroke('datum', pathOf(place(i * tick, 0), place(i * tick, major ? 6 : 3)), pens.tick)])
    if (major && i > 0 && (i === count || count - i > 1))
      marks.push([
        text(
          'datum',
          down ? { x: from.x + 7, y: from.y + i * tick - 1.2 } : { x: from.x + i * tick, y: from.y + 7 },
          letters.small,
          showLength(i * tick, units),
          {
            align: down ? 'left' : 'middle',
          },
        ),
      ])
  }
  return marks.flat()
}
