import { dimension, figureFits } from '../../../drafting/dimension/dimension.ts'
import { cross } from '../../../drawing/cross.ts'
import { type Drawing, fill, stroke, text } from '../../../drawing/drawing.ts'
import { affineScale } from '../../../geometry/affine.ts'
import { pathBounds } from '../../../geometry/bounds.ts'
import { circle, pathOf, rectangle } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import { showLength, type Units } from '../../../length.ts'
import type { Flat, SolvedQuarter } from '../../../ramp/ramp.ts'
import type { JointPlate } from '../../../stock/joint-plate.ts'
import { within } from '../detail.ts'
import { rampProfile } from '../profile.ts'
import { type View, viewOf, viewStyle } from '../view.ts'

const layer = 'note'
const { lines, size } = viewStyle
/** Shown beside the plate and over it, mm of the ramp. */
const around = { beside: 30, above: 60 } as const
/** Lines of dimensions below the floor, mm. */
const rows = { first: 7, next: 7 } as const
/** A bolt's hole, mm of the ramp. */
const hole = 9

export const plateWindow = ({ size: [long, high] }: JointPlate) => ({
  x0: -long / 2 - around.beside,
  x1: long / 2 + around.beside,
  y0: 0,
  y1: high + around.above,
})

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
  const show = (mm: number): string => showLength(mm, units)
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
  const up = holes.up * ratio
  const bolts = [...holes.flat.map((x) => -x), ...holes.quarter].map((x) => ({ x: x * ratio, y: up }))
  /** From the joint to each hole and to the plate's end, one line under the other; the way they run along the floor. */
  const along = (own: readonly number[], way: 1 | -1): Drawing =>
    [...own.map((x) => ({ x, y: up })), { x: long / 2, y: 0 }].flatMap(({ x, y }, row) =>
      dimension(
        {
          from: { x: 0, y: 0 },
          to: { x: way * x * ratio, y },
          angle: 0,
          through: { x: 0, y: -rows.first - row * rows.next },
          figure: show(x),
        },
        viewStyle,
      ),
    )
  /** From the floor to so far up, its line at `through`. */
  const upright = (to: number, x: number, mm: number, through: number): Drawing =>
    dimension(
      {
        from: { x, y: 0 },
        to: { x, y: to },
        angle: Math.PI / 2,
        through: { x: through, y: 0 },
        figure: show(mm),
        place: figureFits(to, show(mm), size) ? 'between' : 'past-to',
      },
      viewStyle,
    )
  const low = -rows.first - Math.max(holes.quarter.length, holes.flat.length) * rows.next - 2.5 * size
  const names = timbers.flatMap(({ path, name, quarter: own }): Drawing => {
    const { x0, x1, y1 } = pathBounds(path)
    const x = (x0 + x1) / 2
    const over = box.y1 * ratio + 3
    return x > left + 2 && x < right - 2 && y1 > 0
      ? [
          stroke(layer, pathOf({ x, y: Math.min(y1, box.y1 * ratio) - 0.5 }, { x, y: over }), lines.thin),
          text(layer, { x, y: over + 1.2 }, size, `stud ${name} of ${own ? quarter.name : flat.name}`, {
            align: own ? 'left' : 'right',
          }),
        ]
      : []
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
    {
      name: 'along',
      marks: [...along(holes.quarter, 1), ...along(holes.flat, -1)],
    },
    {
      name: 'up',
      marks: [...upright(top, half, high, right + 15), ...upright(up, bolts.at(-1)!.x, holes.up, right + 6)],
    },
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
