import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { arcSegment, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'

/** Half a circle on each page with the numbers of both pages in it: only the right two make a whole one. mm. */
const radii = [5, 5.4, 5.8, 6.4, 7, 7.6, 8.2] as const
/** No mark is larger, mm. */
export const pairMost = radii.at(-1)!
/** The middle of the numbers, as a share of the radius, and what they keep off the circle, mm. */
const middleShare = 0.48
const air = 0.2

/** The largest letters with which words stay in half a circle, mm. */
const sizeIn = (radius: number, words: string): number => {
  const wide = textWidth(words, 1, 'bold')
  const fits = (size: number): boolean =>
    Math.hypot((size * wide) / 2, middleShare * radius + size / 2) <= radius - air
  return [letters.small, 2.2, letters.least].find(fits) ?? 0
}

/** What is read in both halves: the lower number first. */
const pairWords = ([own, other]: readonly [number, number]): string =>
  own < other ? `${own}–${other}` : `${other}–${own}`

/** Of the mark of two pages, mm. */
export const pairRadius = (pages: readonly [number, number]): number => {
  const words = pairWords(pages)
  return radii.find((one) => sizeIn(one, words) > 0) ?? pairMost
}

/** `angle`: direction in which the words of the page are read, radians. */
export const pairMarks = (
  middle: Point,
  inward: number,
  pages: readonly [number, number],
  angle: number,
): Drawing => {
  const words = pairWords(pages)
  const radius = pairRadius(pages)
  const size = sizeIn(radius, words) || letters.least
  const centre = pointToward(middle, inward, radius * middleShare)
  return [
    stroke('joint', segmentsPath([arcSegment(middle, radius, inward - Math.PI / 2, Math.PI)]), pens.mark),
    text('joint', pointToward(centre, angle - Math.PI / 2, size / 2), size, words, {
      angle,
      face: 'bold',
      align: 'middle',
    }),
  ]
}
