import { type Affine, affineApply, affineIdentity, affineThen } from '../geometry/affine.ts'
import { type Box, boxUnion, pathBounds, pointsBounds } from '../geometry/bounds.ts'
import { boxCorners } from '../geometry/clip.ts'
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
          : pointsBounds(boxCorners(pathBounds(mark.path)).map((p) => affineApply(map, p)))
    if (box) all = all ? boxUnion(all, box) : box
  }
  return all
}
