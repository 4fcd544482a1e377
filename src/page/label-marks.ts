import { type Drawing, fill, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { convexContains } from '../geometry/clip.ts'
import { rectangle } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { PatternLabel } from '../pattern/pattern.ts'
import { pens } from '../pattern/pens.ts'
import { clipMarks } from './clip-marks.ts'
import type { Tile } from './tile.ts'

/** The words of a label alone, at one of its places. */
export const labelWords = ({ words, size }: PatternLabel, middle: Point) =>
  text('mark', { x: middle.x, y: middle.y - size / 2 }, size, words, { face: 'bold', align: 'middle' })

/** Labels where they stand whole in what a page keeps, in their boxes; else their words where the usual place is. In the pattern. */
export const labelMarks = (labels: readonly PatternLabel[], tile: Tile): Drawing =>
  labels.flatMap((label): Drawing => {
    const half = { x: textWidth(label.words, label.size, 'bold') / 2 + 1.5, y: label.size / 2 + 1.5 }
    const whole = label.places.find(({ x, y }) =>
      [-1, 1].every((i) =>
        [-1, 1].every((k) => convexContains(tile.cell, { x: x + i * half.x, y: y + k * half.y })),
      ),
    )
    if (!whole) return clipMarks([labelWords(label, label.places[0]!)], tile)
    const frame = (less: number) =>
      rectangle(
        whole.x - half.x + less,
        whole.y - half.y + less,
        whole.x + half.x - less,
        whole.y + half.y - less,
      )
    return [fill('mark', frame(0), 0), fill('mark', frame(pens.mark.width), 1), labelWords(label, whole)]
  })
