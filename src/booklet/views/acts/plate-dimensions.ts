import { dimension, figureFits } from '../../../drafting/dimension/dimension.ts'
import type { Drawing } from '../../../drawing/drawing.ts'
import { showLength, type Units } from '../../../length.ts'
import type { JointPlate } from '../../../stock/joint-plate.ts'
import { viewStyle } from '../view.ts'

/** Lines of dimensions below the floor, mm. */
const rows = { first: 7, next: 7 } as const

/** Lines of dimensions up beyond the sides' break, to the holes and to the plate's upper edge, mm. */
const columns = { holes: 6, plate: 15 } as const

/** How far down the lines below the floor reach, mm. */
export const dimensionsFoot = ({ holes }: JointPlate): number =>
  -rows.first - Math.max(holes.quarter.length, holes.flat.length) * rows.next

/** From the joint to each hole and to the plate's end, one line under the other; to both sides along the floor. */
export const alongPlate = ({ size: [long], holes }: JointPlate, units: Units, ratio: number): Drawing => {
  const oneWay = (own: readonly number[], way: 1 | -1): Drawing =>
    [...own.map((x) => ({ x, y: holes.up * ratio })), { x: long / 2, y: 0 }].flatMap(({ x, y }, row) =>
      dimension(
        {
          from: { x: 0, y: 0 },
          to: { x: way * x * ratio, y },
          angle: 0,
          through: { x: 0, y: -rows.first - row * rows.next },
          figure: showLength(x, units),
        },
        viewStyle,
      ),
    )
  return [...oneWay(holes.quarter, 1), ...oneWay(holes.flat, -1)]
}

/** From the floor to the plate's upper edge and to its holes, beyond `right`, where the drawing breaks off, mm. */
export const upPlate = (
  { size: [long, high], holes }: JointPlate,
  units: Units,
  ratio: number,
  right: number,
): Drawing => {
  const upright = (mm: number, x: number, beyond: number): Drawing => {
    const figure = showLength(mm, units)
    return dimension(
      {
        from: { x, y: 0 },
        to: { x, y: mm * ratio },
        angle: Math.PI / 2,
        through: { x: right + beyond, y: 0 },
        figure,
        place: figureFits(mm * ratio, figure, viewStyle.size) ? 'between' : 'past-to',
      },
      viewStyle,
    )
  }
  return [
    ...upright(high, (long / 2) * ratio, columns.plate),
    ...upright(holes.up, holes.quarter.at(-1)! * ratio, columns.holes),
  ]
}
