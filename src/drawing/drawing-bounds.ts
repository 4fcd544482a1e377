import { type Affine, affineApply, affineIdentity, affineThen } from '../geometry/affine.ts'
import { type Box, pathBounds } from '../geometry/bounds.ts'
import { boxCorners } from '../geometry/clip.ts'
import type { Point } from '../geometry/point.ts'
import type { Drawing } from './drawing.ts'
import { textCorners } from './text-box.ts'

/** The box around all marks, pens left out; null where there are none. Exact where `map` does not turn the drawing. */
export const drawingBounds = (drawing: Drawing, map: Affine = affineIdentity): Box | null => {
  const box = { x0: none, y0: none, x1: -none, y1: -none }
  growOver(box, drawing, map)
  return box.x0 === none ? null : box
}

const none = Number.POSITIVE_INFINITY
type Growing = { -readonly [side in keyof Box]: number }

const growOver = (box: Growing, drawing: Drawing, map: Affine): void => {
  for (const mark of drawing)
    if (mark.kind === 'group') growOver(box, mark.marks, affineThen(mark.map, map))
    else if (mark.kind === 'text') growBy(box, textCorners(mark, map))
    else {
      const own = pathBounds(mark.path)
      if (map !== affineIdentity)
        growBy(
          box,
          boxCorners(own).map((p) => affineApply(map, p)),
        )
      else {
        grow(box, own.x0, own.y0)
        grow(box, own.x1, own.y1)
      }
    }
}

const growBy = (box: Growing, points: readonly Point[]): void => {
  for (const { x, y } of points) grow(box, x, y)
}

const grow = (box: Growing, x: number, y: number): void => {
  if (x < box.x0) box.x0 = x
  if (y < box.y0) box.y0 = y
  if (x > box.x1) box.x1 = x
  if (y > box.y1) box.y1 = y
}
