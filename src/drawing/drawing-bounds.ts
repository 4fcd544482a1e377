import { type Affine, affineApply, affineIdentity, affineThen } from '../geometry/affine.ts'
import { type Box, boxUnion, pathBounds, pointsBounds } from '../geometry/bounds.ts'
import type { Drawing } from './drawing.ts'
import { textCorners } from './text-box.ts'

/** The box around all marks, pens left out; null where there are none. Exact where `map` does not turn the drawing. */
export const drawingBounds = (drawing: Drawing, map: Affine = affineIdentity): Box | null => {
  let all: Box | null = null
  for (const mark of drawing) {
    const box =
      mark.kind === 'group'
        ? drawingBounds(mark.marks, affineThen(mark.map, map))
        : mark.kind === 'text'
          ? pointsBounds(textCorners(mark, map))
          : pointsBounds(corners(pathBounds(mark.path)).map((p) => affineApply(map, p)))
    if (box) all = all ? boxUnion(all, box) : box
  }
  return all
}

const corners = ({ x0, y0, x1, y1 }: Box) => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
]
