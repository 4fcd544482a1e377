import type { Units } from '../../design/design.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { type ParagraphStyle, paragraph } from '../../drawing/paragraph.ts'
import { shortened } from '../../drawing/shortened.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Box } from '../../geometry/bounds.ts'
import { inch } from '../../geometry/inch.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { squareSide } from '../../printer/reading.ts'
import { rulerStep } from '../ruler/rulers.ts'
import { type SquareInside, type SquareSide, squareInside, squareSides } from './square-inside.ts'

export interface SquarePage {
  readonly draw: () => Drawing
  /** lower left corner of the square on the page, ideal mm */
  readonly corner: Point
  readonly side: number
}

export interface SquareFacts {
  /** of the design whose set it belongs to; null for a square alone */
  readonly title: string | null
  readonly units: Units
  readonly set: string
  /** what to type when it is off: the `gauge` command with blanks to fill, or the way to a square that can be gauged */
  readonly command: string
  /** name of the printer whose correction is used; null for none */
  readonly printer: string | null
  /** combs at the paper's edges are drawn as well */
  readonly combs: boolean
}

/** Room that rulers, words and the square's own distance from the edges take beside it, mm. */
const beside = { across: 32, down: 84 }

/** The rulers keep clear of the combs at the paper's edges, mm. */
const rulerInset = 8

/** Side of the square: smaller only where the page cannot hold the usual one; mm. */
export const squareSideIn = (window: Box): SquareSide =>
  squareSides.find(
    (side) => side + beside.across <= window.x1 - window.x0 && side + beside.down <= window.y1 - window.y0,
  ) ?? 50

/** How far a length may be off: 1 in 300, in whole twentieths of a millimetre, mm. */
const mostOff = (length: number): number => Math.floor(length / 15) / 20

/** The page that proves the printer: a true square, two long rulers; ideal page mm. */
export const squarePage = (
  window: Box,
  { title, units, set, command, printer, combs }: SquareFacts,
): SquarePage => {
  const width = window.x1 - window.x0
  const side = squareSideIn(window)
  const inside = squareInside(side)
  const size = width < 120 ? letters.small : 3.2
  const style: ParagraphStyle = { layer: 'note', width: width - 4, size }
  const inches = units === 'in' ? ` (${showLength(side, 'in', { unit: true })})` : ''
  const sideWords = `${side} mm${inches}`
  const diagonal = side * Math.SQRT2
  const lengthOf = `${diagonal.toFixed(1)} mm`
  const ofInches = units === 'in' ? [showLength(diagonal, 'in', { unit: true })] : []
  const diagonalWords = inside.told ? [`true: ${lengthOf}`, ...ofInches] : []
  const called = inside.told ? sideWords : `${side} mm`
  const small = { ...style, size: letters.small }
  // a smaller square has no shy length, and its page little room
  const inInches = units === 'in' && side === squareSide
  const across = rulerLength(width - rulerInset - 4, units)
  // what a small square may be off is too little for a rule; a narrow page has no room to say so
  const longer =
    side < squareSide && across > side && width >= 100
      ? `, or the ruler of ${showLength(across, units, { unit: true })} by more than ${mostOff(across)} mm`
      : ''
  const words: readonly (readonly [string, ParagraphStyle])[] = [
    [
      printer === null ? 'Check the printer first' : `Printed with the correction of ${printer}`,
      { ...style, size: letters.word, face: 'bold' },
    ],
    [
      `Measure both sides of this square with a steel rule, middle of line to middle of line, never from a tape's hook: each must be ${sideWords}${inside.told ? '' : `, A and B ${[lengthOf, ...ofInches.map((one) => `(${one})`)].join(' ')}`}${units === 'in' ? `; + is 1/32 more${inInches ? ', – is 1/32 less' : ''}` : ''}.`,
      style,
    ],
    [
      `Off by more than ${mostOff(side)} mm${inInches ? ' (1/64 in)' : ''}${longer}: print at 100 %, never "fit to page", one-sided, and measure again. Still off: ${
        printer === null
          ? 'measure A and B too; fill in "printer" in the browser, or type (NAME: a word for it):'
          : 'print a square without correction and gauge that one anew; this one would tell what is left only. Type:'
      }`,
      style,
    ],
    [command, { ...style, size: lineSize(command, style.width, size) }],
  ]
  let under = window.y1 - 2
  const told = words.map(([line, look]) => {
    const lines = paragraph({ x: window.x0, y: under }, line, look)
    under = lines.bottom
    return lines.marks
  })
  /** `down`: where the ruler down the page ends, mm */
  const rulerWords = (down: number): { readonly marks: Drawing; readonly bottom: number } =>
    printer === null
      ? paragraph(
          { x: window.x0, y: under },
          `A long ruler from 0 to its end tells more: type it behind these, --across ____mm/${plainMm(across)} or --down ____mm/${plainMm(down)}.${inInches ? ' Inches go as 5.92in.' : ''}`,
          small,
        )
      : { marks: [], bottom: under }
  // the ruler begins where the words end: they are laid with a length as long as its own first
  const { bottom: top } = rulerWords(888.8)
  const down = rulerLength(top - window.y0 - rulerInset - 4, units)
  const corner = {
    x: window.x0 + rulerInset + 16,
    y: Math.max(window.y0 + rulerInset + 16, (top + window.y0 + 16 - side) / 2),
  }
  const at = (u: number, v: number): Point => ({ x: corner.x + u * side, y: corner.y + v * side })
  const rulerFrom = { x: window.x0 + rulerInset, y: window.y0 + rulerInset }
  return {
    corner,
    side,
    draw: () => [
      ...told.flat(),
      ...rulerWords(down).marks,
      stroke('mark', rectangle(corner.x, corner.y, corner.x + side, corner.y + side), { width: 0.35 }),
      stroke('datum', pathOf(at(0, 0), at(1, 1)), pens.tick),
      stroke('datum', pathOf(at(0, 1), at(1, 0)), pens.tick),
      text('note', { x: at(0.5, 0).x, y: at(0, 1).y - inside.edge }, inside.size, `ACROSS ${called}`, {
        align: 'middle',
        face: 'bold',
      }),
      text('note', { x: corner.x + inside.edge, y: at(0, 0.5).y }, inside.size, `DOWN ${called}`, {
        align: 'middle',
        angle: Math.PI / 2,
        face: 'bold',
      }),
      ...inside.diagonals.flatMap(
        ({ letter, at: { x, y }, blank }): Drawing => [
          text('note', { x: corner.x + x, y: corner.y + y }, inside.size, letter, { face: 'bold' }),
          // the last one stands over the line to write on
          ...diagonalWords.map((line, i) =>
            text(
              'note',
              {
                x: corner.x + blank.x + inside.blank,
                y: corner.y + blank.y + blankRoom + (diagonalWords.length - 1 - i) * 1.65 * letters.small,
              },
              letters.small,
              line,
              { align: 'right' },
            ),
          ),
        ],
      ),
      text('note', { x: at(0.5, 0).x, y: corner.y + inside.code }, letters.small, `set ${set}`, {
        align: 'middle',
      }),
      ...(title === null
        ? []
        : [
            text(
              'note',
              { x: at(0.5, 0).x, y: corner.y + inside.code + 1.65 * letters.small },
              letters.small,
              shortened(title, letters.small, side * 0.55, 'regular'),
              { align: 'middle' },
            ),
          ]),
      ...blanks(at, inside),
      ...(inInches ? inchSquare(corner) : []),
      ...(combs ? combWords({ x: corner.x, y: corner.y - 5.3 }, window.x1 - corner.x) : []),
      text('datum', { x: rulerFrom.x - 2.4, y: rulerFrom.y - 2.4 - letters.small }, letters.small, '0', {
        align: 'right',
      }),
      ...longRuler(rulerFrom, across, false, units),
      ...longRuler(rulerFrom, down, true, units),
    ],
  }
}

/** The largest in which words stand on one line; the least where none does. */
const lineSize = (words: string, width: number, largest: number): number =>
  [largest, 2.8, letters.small].find((size) => textWidth(words, size, 'regular') <= width) ?? letters.small

/** What is measured is written down where it is measured: lines under the names and true lengths. */
const blanks = (at: (u: number, v: number) => Point, { edge, blank, diagonals }: SquareInside): Drawing => {
  const line = (from: Point, to: Point): Drawing => [stroke('note', pathOf(from, to), pens.tick)]
  const corner = at(0, 0)
  const top = { x: at(0.5, 0).x, y: at(0, 1).y - edge - blankRoom }
  const left = { x: corner.x + edge + blankRoom, y: at(0, 0.5).y }
  return [
    ...line({ x: top.x - blank / 2, y: top.y }, { x: top.x + blank / 2, y: top.y }),
    ...line({ x: left.x, y: left.y - blank / 2 }, { x: left.x, y: left.y + blank / 2 }),
    ...diagonals.flatMap(({ blank: { x, y } }) => {
      const from = { x: corner.x + x, y: corner.y + y }
      return line(from, { x: from.x + blank, y: from.y })
    }),
  ]
}

/** Room to write a figure over a line, mm. */
const blankRoom = 7.5

/** Whole inches for an inch rule, inside the square from its corner. */
const wholeInches = 5
const inchSquare = ({ x, y }: Point): Drawing => {
  const far = wholeInches * inch
  return [
    stroke('mark', pathOf({ x: x + far, y }, { x: x + far, y: y + far }, { x, y: y + far }), pens.stud),
    text(
      'mark',
      { x: x + 0.45 * far, y: y + far + 1.2 },
      letters.small,
      `for an inch rule: ${wholeInches} in`,
      {
        align: 'middle',
      },
    ),
  ]
}

/** What the combs are for, between the square and the ruler under it: 3 mm off the line that is measured. */
const combWords = (at: Point, room: number): Drawing => {
  const tries = [
    'Combs at the edges: the first tick that is printed whole is that margin in mm, for --margins: top, right, bottom, left.',
    'Combs: the first whole tick is the margin in mm; top, right, bottom, left.',
  ]
  const fits = (words: string): boolean => textWidth(words, letters.mark, 'regular') <= room
  const words = tries.find(fits) ?? tries[1]!
  return [text('note', at, Math.min(letters.mark, room / textWidth(words, 1, 'regular')), words)]
}

/** As long as the room allows, in whole ticks; mm. */
const rulerLength = (room: number, units: Units): number => {
  const { tick } = rulerStep(units)
  return Math.floor((room - 3) / tick) * tick
}

/** As `gauge` reads it, in one word. */
const plainMm = (mm: number): string => `${showLength(mm, 'mm', { decimals: 1 })}mm`

/** A ruler from zero; figures in the builder's units, crosses at both ends. */
const longRuler = (from: Point, length: number, down: boolean, units: Units): Drawing => {
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
