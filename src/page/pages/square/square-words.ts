import type { Units } from '../../../design/design.ts'
import type { Drawing } from '../../../drawing/drawing.ts'
import { type ParagraphStyle, paragraph } from '../../../drawing/paragraph.ts'
import { textWidth } from '../../../drawing/text-width.ts'
import type { Point } from '../../../geometry/point.ts'
import { showLength } from '../../../length.ts'
import { letters } from '../../../pattern/pens.ts'
import { squareSide } from '../../../printer/reading.ts'
import { type SquareSide, squareInside } from './square-inside.ts'

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

/** How far a length may be off: 1 in 300, in whole twentieths of a millimetre. */
const allowed = { oneIn: 300, parts: 20 } as const
const mostOff = (mm: number): number => Math.floor(mm / (allowed.oneIn / allowed.parts)) / allowed.parts

/** Whether inches can be read off it: a smaller square has no shy length, and its page little room. */
export const hasInches = (units: Units, side: SquareSide): boolean => units === 'in' && side === squareSide

/** What is told of a square in words. */
export interface SquareWords {
  /** over it, one under the other */
  readonly over: readonly (readonly [string, ParagraphStyle])[]
  /** along each of its sides, and beside each diagonal, where that is told there */
  readonly side: string
  readonly diagonal: readonly string[]
}

/** Words end so far before the window does, mm. */
const air = 4

/** `across`: how long the ruler across the page is; mm. */
export const squareWords = (
  { units, printer, command }: SquareFacts,
  side: SquareSide,
  width: number,
  across: number,
): SquareWords => {
  const { told } = squareInside(side)
  const size = width < 120 ? letters.small : 3.2
  const style: ParagraphStyle = { layer: 'note', width: width - air, size }
  const inches = units === 'in' ? ` (${showLength(side, 'in', { unit: true })})` : ''
  const sideWords = `${side} mm${inches}`
  const diagonal = side * Math.SQRT2
  const lengthOf = `${diagonal.toFixed(1)} mm`
  const ofInches = units === 'in' ? [showLength(diagonal, 'in', { unit: true })] : []
  const inInches = hasInches(units, side)
  // what a small square may be off is too little for a rule; a narrow page has no room to say so
  const longer =
    side < squareSide && across > side && width >= 100
      ? `, or the ruler of ${showLength(across, units, { unit: true })} by more than ${mostOff(across)} mm`
      : ''
  return {
    over: [
      [
        printer === null ? 'Check the printer first' : `Printed with the correction of ${printer}`,
        { ...style, size: letters.word, face: 'bold' },
      ],
      [
        `Measure both sides of this square with a steel rule, middle of line to middle of line, never from a tape's hook: each must be ${sideWords}${told ? '' : `, A and B ${[lengthOf, ...ofInches.map((one) => `(${one})`)].join(' ')}`}${units === 'in' ? `; + is 1/32 more${inInches ? ', – is 1/32 less' : ''}` : ''}.`,
        style,
      ],
      [
        `Off by more than ${mostOff(side)} mm${inInches ? ' (1/64 in)' : ''}${longer}: print at 100 %, never "fit to page", one-sided, and measure again. Still off: ${
          printer === null
            ? 'measure A and B too; fill in "printer" in the browser, or type (NAME: a word for it):'
            : 'measure a square printed without correction; this one would tell what is left only. Save it under "printer" in the browser, or type:'
        }`,
        style,
      ],
      [command, { ...style, size: lineSize(command, style.width, size) }],
    ],
    side: told ? sideWords : `${side} mm`,
    diagonal: told ? [`true: ${lengthOf}`, ...ofInches] : [],
  }
}

/** How the rulers are told, where a printer is gauged with them; their lengths and the width of the window, mm. */
export const rulerWords = (
  at: Point,
  { units, printer }: SquareFacts,
  side: SquareSide,
  width: number,
  across: number,
  down: number,
): { readonly marks: Drawing; readonly bottom: number } =>
  printer === null
    ? paragraph(
        at,
        `A long ruler from 0 to its end tells more: type it behind these, --across ____mm/${plainMm(across)} or --down ____mm/${plainMm(down)}.${hasInches(units, side) ? ' Inches go as 5.92in.' : ''}`,
        { layer: 'note', width: width - air, size: letters.small },
      )
    : { marks: [], bottom: at.y }

/** The largest in which words stand on one line; the least where none does. */
const lineSize = (words: string, width: number, largest: number): number =>
  [largest, 2.8, letters.small].find((size) => textWidth(words, size, 'regular') <= width) ?? letters.small

/** As `gauge` reads it, in one word. */
const plainMm = (mm: number): string => `${showLength(mm, 'mm', { decimals: 1 })}mm`
