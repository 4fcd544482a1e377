import { type Affine, affineApply, affineIdentity, affineRotate, affineThen } from '../geometry/affine.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import { textWidth } from './text-width.ts'

export type TextMark = Extract<Mark, { kind: 'text' }>

/** Corners of the box that a text takes, letters below the line included, after `map`. */
export const textCorners = (mark: TextMark, map: Affine): readonly Point[] => {
  const width = textWidth(mark.text, mark.size, mark.face)
  const left = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width
  const turn = affineRotate(mark.angle)
  const cos = turn[0]
  const sin = turn[1]
  const own: Affine = [cos, sin, -sin, cos, mark.at.x, mark.at.y]
  const placed = map === affineIdentity ? own : affineThen(own, map)
  const below = -0.3 * mark.size
  return [
    affineApply(placed, { x: left, y: below }),
    affineApply(placed, { x: left + width, y: below }),
    affineApply(placed, { x: left + width, y: mark.size }),
    affineApply(placed, { x: left, y: mark.size }),
  ]
}
