import { type Affine, affineApply, affineIdentity, affineRotate, affineThen } from '../geometry/affine.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import { textWidth } from './text-width.ts'

export type TextMark = Extract<Mark, { kind: 'text' }>

/** Corners of the box that a text takes, letters below the line included, after `map`. */
export const textCorners = (mark: TextMark, map: Affine): readonly Point[] => {
  const width = textWidth(mark.text, mark.size, mark.face)
  const left = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width
  const right = left + width
  const below = -0.3 * mark.size
  const turn = affineRotate(mark.angle)
  const cos = turn[0]
  const sin = turn[1]
  const { x, y } = mark.at
  // asked for each word at each place where it is tried: mostly without a map
  if (map === affineIdentity)
    return [
      { x: cos * left - sin * below + x, y: sin * left + cos * below + y },
      { x: cos * right - sin * below + x, y: sin * right + cos * below + y },
      { x: cos * right - sin * mark.size + x, y: sin * right + cos * mark.size + y },
      { x: cos * left - sin * mark.size + x, y: sin * left + cos * mark.size + y },
    ]
  const placed = affineThen([cos, sin, -sin, cos, x, y], map)
  return [
    affineApply(placed, { x: left, y: below }),
    affineApply(placed, { x: right, y: below }),
    affineApply(placed, { x: right, y: mark.size }),
    affineApply(placed, { x: left, y: mark.size }),
  ]
}
