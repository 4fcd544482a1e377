import { group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { type View, viewMarks } from '../views/view.ts'
import { type Block, beside, type FixedBlock, stack } from './block.ts'

/** Width and height of a step's picture, and the air beside it, mm on paper. */
const picture = { width: 46, height: 27 } as const
const between = 4

/** The size of what is drawn alike by any ratio. */
export const noScale = { width: 1, height: 1 } as const

/** Steps with a small picture at their left that shows what they do; it has no scale. `at` draws it by a ratio, `thing` is its own size in mm. */
export const stage = (
  at: (ratio: number) => View,
  thing: { readonly width: number; readonly height: number },
  steps: (width: number) => readonly Block[],
  width: number,
): FixedBlock => {
  // words and marks reach over the thing's own edges
  let ratio = Math.min(picture.width / thing.width, picture.height / thing.height)
  let view = at(ratio)
  for (let i = 0; i < 3 && !fits(view); i++) {
    ratio *= 0.88
    view = at(ratio)
  }
  const { box } = view
  const drawn: FixedBlock = {
    kind: 'fixed',
    height: box.y1 - box.y0 + 4,
    withNext: false,
    marks: ({ x, y }) => [
      group(
        affineTranslate(x + Math.max(0, (picture.width - (box.x1 - box.x0)) / 2) - box.x0, y - 1 - box.y1),
        viewMarks(view),
      ),
    ],
  }
  const from = picture.width + between
  return beside(drawn, stack(steps(width - from)), from)
}

const fits = ({ box }: View): boolean =>
  box.x1 - box.x0 <= picture.width + 1 && box.y1 - box.y0 <= picture.height + 8
