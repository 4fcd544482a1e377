import type { RampDesign, Units } from '../../design/design.ts'
import { type Finding, stop } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'

/** Length of a stud: the width less all sides, shared by the bays between them. mm */
export const studLength = ({ width, sides }: Pick<RampDesign, 'width' | 'sides'>): number =>
  (width - sides.count * sides.thickness) / (sides.count - 1)

/** Middle planes of sides and ribs, from the ramp's left outer face. */
export const wallMiddles = ({ width, sides }: RampDesign): readonly number[] =>
  Array.from(
    { length: sides.count },
    (_, i) => sides.thickness / 2 + (i * (width - sides.thickness)) / (sides.count - 1),
  )

/** Sides that leave no room between them. */
export const widthFindings = (design: RampDesign, units: Units): readonly Finding[] => {
  if (studLength(design) > same) return []
  const { width, sides } = design
  return [
    stop(
      'width',
      `${sides.count} sides of ${measured(sides.thickness, units)} leave no room for studs in a width of ${measured(width, units)}; ` +
        `make it ${offer(units).above(sides.count * sides.thickness)} or more`,
    ),
  ]
}
