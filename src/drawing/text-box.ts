import { type Affine, affineApply, affineIdentity, affineRotate, affineThen } from '../geometry/affine.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import { textWidth } from './text-width.ts'

export type TextMark = Extract<Mark, { kind: 'text' }>

/** Corners of the box that a text takes, letters below the line included, after `map`. */
export const textCorners = (mark: TextMark, map: Affine): readonly Point[] => {
  const { left, right } = endsOf(mark)
  const turn = affineRotate(mark.angle)
  const cos = turn[0]
  const sin = turn[1]
  const { x, y } = mark.at
  const below = -0.3 * mark.size
  // most words are asked about as they stand
  if (map === affineIdentity) return turnedBox(left, right, below, mark.size, cos, sin, x, y)
  const placed = affineThen([cos, sin, -sin, cos, x, y], map)
  return [
    affineApply(placed, { x: left, y: below }),
    affineApply(placed, { x: right, y: below }),
    affineApply(placed, { x: right, y: mark.size }),
    affineApply(placed, { x: left, y: mark.size }),
  ]
}

/** The same for words that are tried at many places, measured and turned once. */
export const cornersAt = (words: Omit<TextMark, 'at'>): ((at: Point) => readonly Point[]) => {
  const { left, right } = endsOf(words)
  const [cos, sin] = affineRotate(words.angle)
  const below = -0.3 * words.size
  return ({ x, y }) => turnedBox(left, right, below, words.size, cos, sin, x, y)
}

/** Where a text begins and ends along its baseline, from its place. */
const endsOf = ({ text, size, face, align }: Omit<TextMark, 'at'>) => {
  const width = textWidth(text, size, face)
  const left = align === 'left' ? 0 : align === 'middle' ? -width / 2 : -width
  return { left, right: left + width }
}

const turnedBox = (
  left: number,
  right: number,
  low: number,
  high: number,
  cos: number,
  sin: number,
  x: number,
  y: number,
): readonly Point[] => [
  { x: cos * left - sin * low + x, y: sin * left + cos * low + y },
  { x: cos * right - sin * low + x, y: sin * right + cos * low + y },
  { x: cos * right - sin * high + x, y: sin * right + cos * high + y },
  { x: cos * left - sin * high + x, y: sin * left + cos * high + y },
]
