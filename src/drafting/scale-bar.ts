import { type Drawing, fill, stroke, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import type { Box } from '../geometry/bounds.ts'
import { inch } from '../geometry/inch.ts'
import { rectangle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { showLength } from '../length/show.ts'
import type { Units } from '../length/units.ts'
import type { DraftStyle } from './line-types.ts'
import type { Scale } from './scale.ts'

/** Lengths of one part of the bar, mm of the thing. */
const steps = {
  mm: [10, 20, 50, 100, 200, 500, 1000, 2000],
  in: [1, 2, 6, 12, 24, 48, 96].map((n) => n * inch),
} as const

/** Parts of a bar, black and white in turn. */
const parts = 4
const high = 0.5

export interface ScaleBar {
  readonly marks: Drawing
  readonly box: Box
}

/** A bar of four parts that is at most `width` mm long on paper, figures over its seams, the scale in words after it. `at` is its lower left corner. */
export const scaleBar = (
  at: Point,
  { ratio, words }: Scale,
  units: Units,
  width: number,
  { layer, size, lines }: DraftStyle,
): ScaleBar => {
  const step = [...steps[units]].reverse().find((mm) => mm * ratio * parts <= width) ?? steps[units][0]
  const part = step * ratio
  const top = at.y + high * size
  const figures = [0, 2, 4].map((i) => ({
    x: at.x + i * part,
    words: showLength(i * step, units, { unit: i === parts }),
  }))
  const last = figures.at(-1)!
  // the unit stands past the end, so that the number is over it
  const number = textWidth(showLength(parts * step, units), size, 'regular')
  const lastLeft = last.x - number / 2
  const end = Math.max(last.x, lastLeft + textWidth(last.words, size, 'regular')) + 2 * size
  const baseline = top + 0.4 * size
  return {
    marks: [
      ...Array.from({ length: parts }, (_, i) =>
        rectangle(at.x + i * part, at.y, at.x + (i + 1) * part, top),
      ).flatMap((path, i) => (i % 2 === 0 ? [fill(layer, path, 0)] : [])),
      stroke(layer, rectangle(at.x, at.y, last.x, top), lines.thin),
      ...figures
        .slice(0, -1)
        .map(({ x, words: figure }) => text(layer, { x, y: baseline }, size, figure, { align: 'middle' })),
      text(layer, { x: lastLeft, y: baseline }, size, last.words),
      text(layer, { x: end, y: at.y }, size, words, { face: 'bold' }),
    ],
    box: {
      x0: at.x - textWidth('0', size, 'regular') / 2,
      y0: at.y - 0.3 * size,
      x1: end + textWidth(words, size, 'bold'),
      y1: baseline + size,
    },
  }
}
