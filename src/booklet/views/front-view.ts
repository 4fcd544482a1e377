import { isCurved } from '../../design/kind-traits.ts'
import { groupDimensions } from '../../drafting/dimension/group-dimensions.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import { wallMiddles } from '../../ramp/frame/bays.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { frameCurve } from './profile.ts'
import { type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** From before the toe, or a flat's end: sides below the skin, the ridden face, the pipe along its top. */
export const frontView = (ramp: SolvedRamp, units: Units, ratio: number): View => {
  const { width, design } = ramp
  const show = (mm: number): string => showLength(mm, units)
  const curve = frameCurve(ramp)
  const face = curve.offset(ramp.skinThickness)
  const toe = curve.point(curve.toe).y
  const step = face.point(curve.toe).y
  const top = isCurved(ramp) ? ramp.transition.heights.deck : ramp.heights.surface
  const seen = (path: Path): Drawing => [fill(layer, path, 1), stroke(layer, path, lines.outline)]
  const box = (x0: number, y0: number, x1: number, y1: number): Path =>
    rectangle(x0 * ratio, y0 * ratio, x1 * ratio, y1 * ratio)
  const thick = design.sides.thickness
  const coping = ramp.coping
  const lip = isCurved(ramp) ? ramp.transition.heights.surface : step
  const floor = pathOf({ x: -8, y: 0 }, { x: width * ratio + 8, y: 0 })
  const outline = {
    x0: 0,
    y0: 0,
    x1: width * ratio,
    y1: Math.max(top, coping ? coping.centre.y + coping.outside / 2 : 0) * ratio,
  }
  const { placed } = groupDimensions(
    [
      { from: { x: 0, y: 0 }, to: { x: outline.x1, y: 0 }, figure: show(width), sides: ['below'] },
      {
        from: { x: outline.x1, y: 0 },
        to: { x: outline.x1, y: top * ratio },
        figure: show(top),
        sides: ['right'],
      },
    ],
    outline,
    viewStyle,
  )
  return viewOf([
    { name: 'floor', marks: [stroke(layer, floor, lines.outline)] },
    { name: 'deck', marks: top > lip ? seen(box(0, lip, width, top)) : [] },
    { name: 'face', marks: isCurved(ramp) ? seen(box(0, step, width, lip)) : [] },
    { name: 'skin', marks: ramp.skinThickness > 0 ? seen(box(0, Math.min(toe, step), width, step)) : [] },
    {
      name: 'sides',
      marks: wallMiddles(design).flatMap((middle) =>
        toe > 0
          ? seen(box(width - middle - thick / 2, 0, width - middle + thick / 2, Math.min(toe, step)))
          : [],
      ),
    },
    ...(coping
      ? [
          {
            name: 'pipe',
            marks: seen(
              box(0, coping.centre.y - coping.outside / 2, width, coping.centre.y + coping.outside / 2),
            ),
          },
        ]
      : []),
    { name: 'dimensions', marks: placed.flatMap((one) => one?.marks ?? []) },
  ])
}
