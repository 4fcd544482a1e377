import { cross } from '../../../drawing/cross.ts'
import { type Drawing, fill, stroke, text } from '../../../drawing/drawing.ts'
import { textWidth } from '../../../drawing/text-width.ts'
import { affineScale } from '../../../geometry/affine.ts'
import { pathBounds } from '../../../geometry/bounds.ts'
import { circle, pathOf, rectangle } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import type { Units } from '../../../length.ts'
import type { Flat, SolvedQuarter } from '../../../ramp/ramp.ts'
import type { JointPlate } from '../../../stock/joint-plate.ts'
import { within } from '../detail.ts'
import { rampProfile } from '../profile.ts'
import { type View, viewOf, viewStyle } from '../view.ts'
import { alongPlate, dimensionsFoot, upPlate } from './plate-dimensions.ts'

const layer = 'note'
const { lines, size } = viewStyle
/** Shown beside the plate and over it, mm of the ramp. */
const around = { beside: 30, above: 60 } as const
/** A bolt's hole, mm of the ramp. */
const hole = 9

export const plateWindow = ({ size: [long, high] }: JointPlate) => ({
  x0: -long / 2 - around.beside,
  x1: long / 2 + around.beside,
  y0: 0,
  y1: high + around.above,
})

/** In which row each name stands, the lowest is 0: names run away from the joint, so the nearer one goes over those that it reaches. */
export const nameRows = (
  names: readonly { readonly at: number; readonly wide: number }[],
): readonly number[] => {
  const rowOf = (i: number): number => {
    const { at, wide } = names[i]!
    const reached = names.flatMap((other, j) =>
      other.at > at && other.at < at + wide + size / 2 ? [rowOf(j) + 1] : [],
    )
    return Math.max(0, ...reached)
  }
  return names.map((_, i) => rowOf(i))
}

/** A side of the flat and one of the quarter from outside, the plate over their joint with its four bolts, each from the joint and from the floor; timbers dashed. */
export const plateView = (
  quarter: SolvedQuarter,
  flat: Flat,
  plate: JointPlate,
  units: Units,
  ratio: number,
): View => {
  const box = plateWindow(plate)
  const window = { box, ratio }
  const [long, high] = plate.size
  const { holes } = plate
  const map = affineScale(ratio)
  // the flat's near end at the joint, running away to the left
  const mirrored = affineScale(-ratio, ratio)
  const [curved, level] = [rampProfile(quarter, units), rampProfile(flat, units)]
  const timbers = [
    ...level.studs.map((path, i) => ({ path: pathMap(path, mirrored), name: `${i + 1}`, quarter: false })),
    ...curved.studs.map((path, i) => ({ path: pathMap(path, map), name: `${i + 1}`, quarter: true })),
  ]
  const [left, right] = [box.x0 * ratio, box.x1 * ratio]
  const [half, top] = [(long / 2) * ratio, high * ratio]
  const bolts = [...holes.flat.map((x) => -x), ...holes.quarter].map((x) => ({
    x: x * ratio,
    y: holes.up * ratio,
  }))
  const low = dimensionsFoot(plate) - 2.5 * size
  const shown = timbers.flatMap(({ path, name, quarter: own }) => {
    const { x0, x1, y1 } = pathBounds(path)
    const x = (x0 + x1) / 2
    const said = `stud ${name} of ${own ? quarter.name : flat.name}`
    return x > left + 2 && x < right - 2 && y1 > 0 ? [{ x, top: y1, own, said }] : []
  })
  const names = [true, false].flatMap((side) => {
    const those = shown.filter(({ own }) => own === side)
    const rows = nameRows(
      those.map(({ x, said }) => ({ at: Math.abs(x), wide: textWidth(said, size, 'regular') })),
    )
    return those.flatMap(({ x, top: y1, said }, i): Drawing => {
      const over = box.y1 * ratio + 3 + rows[i]! * 1.6 * size
      return [
        stroke(layer, pathOf({ x, y: Math.min(y1, box.y1 * ratio) - 0.5 }, { x, y: over }), lines.thin),
        text(layer, { x, y: over + 1.2 }, size, said, { align: side ? 'left' : 'right' }),
      ]
    })
  })
  return viewOf([
    {
      name: 'sides',
      marks: [
        ...within(window, [stroke(layer, pathMap(level.side, mirrored), lines.thin)]),
        ...within(window, [stroke(layer, pathMap(curved.side, map), lines.thin)]),
        stroke(layer, pathOf({ x: left, y: 0 }, { x: right, y: 0 }), lines.outline),
      ],
    },
    {
      name: 'timbers',
      marks: timbers.flatMap(({ path }) => within(window, [stroke(layer, path, lines.hidden)])),
    },
    {
      name: 'plate',
      marks: [
        stroke(layer, rectangle(-half, 0, half, top), { width: 0.5 }),
        ...bolts.flatMap(
          (at): Drawing => [
            fill(layer, circle(at, (hole / 2) * ratio), 1),
            stroke(layer, circle(at, (hole / 2) * ratio), lines.outline),
            ...cross(layer, at, (hole / 2) * ratio + 1.2, lines.thin),
          ],
        ),
      ],
    },
    { name: 'names', marks: names },
    { name: 'along', marks: alongPlate(plate, units, ratio) },
    { name: 'up', marks: upPlate(plate, units, ratio, right) },
    {
      name: 'words',
      marks: [
        text(layer, { x: left, y: low }, size, flat.name, { face: 'bold' }),
        text(layer, { x: right, y: low }, size, quarter.name, { face: 'bold', align: 'right' }),
        text(layer, { x: 0, y: low }, size, 'the joint', { align: 'middle' }),
      ],
    },
  ])
}
