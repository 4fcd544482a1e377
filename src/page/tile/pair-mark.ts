import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { arcSegment, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'

/** Half a circle on each page with the numbers of both pages in it: only the right two make a whole one. mm. */
const pairRadius = 5

/** `angle`: direction in which the words of the page are read, radians. */
export const pairMarks = (
  middle: Point,
  inward: number,
  pages: readonly [number, number],
  angle: number,
): Drawing => {
  const words = [...pages].sort((a, b) => a - b).join('–')
  const size = Math.min(letters.small, (letters.small * 7) / textWidth(words, letters.small, 'bold'))
  const centre = pointToward(middle, inward, pairRadius * 0.48)
  return [
    stroke('joint', segmentsPath([arcSegment(middle, pairRadius, inward - Math.PI / 2, Math.PI)]), pens.mark),
    text('joint', pointToward(centre, angle - Math.PI / 2, size / 2), size, words, {
      angle,
      face: 'bold',
      align: 'middle',
    }),
  ]
}
