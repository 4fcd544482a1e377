import { type Drawing, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Point } from '../../geometry/point.ts'
import { lineWords } from '../../length/words.ts'
import { letters } from '../../pattern/pens.ts'

/** Of a row's size, for each of two lines between its lines. */
const highNote = 0.61

/** What a mark is, set right over the row's line; where one line would be too small to read, on two in the middle of the row. */
export const rowNote = (end: Point, words: string, room: number, usual: number, rowSize: number): Drawing => {
  if (words === '') return []
  const sized = (lines: readonly string[], most: number) => ({
    lines,
    size: Math.min(most, ...lines.map((line) => room / textWidth(line, 1, 'regular'))),
  })
  const single = sized([words], usual)
  if (single.size >= letters.least)
    return [text('note', { x: end.x, y: end.y + 0.4 }, single.size, words, { align: 'right' })]
  const all = lineWords(words)
  const { lines, size } = all
    .slice(1)
    .map((_, i) => [all.slice(0, i + 1).join(' '), all.slice(i + 1).join(' ')])
    .map((pair) => sized(pair, Math.min(usual, rowSize * highNote)))
    .reduce((most, way) => (way.size > most.size ? way : most), single)
  const lowest = end.y + 0.5 * rowSize - 0.95 * size
  return lines.map((line, i) =>
    text('note', { x: end.x, y: lowest + (lines.length - 1 - i) * 1.3 * size }, size, line, {
      align: 'right',
    }),
  )
}
