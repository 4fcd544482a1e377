import { curvedOf } from '../../design/kind-traits.ts'
import { ownUnits } from '../../length/own-units.ts'
import { showLength, type Units } from '../../length.ts'
import { offer, rounded } from '../../ramp/check/offer.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import type { ListLine } from './line.ts'

/** What fills the open groove at each lip without a pipe, and what holds it. The nail's length is common practice, no source. */
export const lipLines = (ramps: WholeDesign['ramps'], units: Units): readonly ListLine[] => {
  const strips = curvedOf(ramps).flatMap(({ name, width, lipGroove }): readonly ListLine[] => {
    if (!lipGroove) return []
    const size = [lipGroove.width, lipGroove.depth].map((mm) => showLength(offer(units).atLeastMm(mm), units))
    const of = ramps.length > 1 ? ` of ${name}` : ''
    return [
      {
        part: 'fittings',
        what: `strip of hard wood, ${size.join(' × ')} or more, ${rounded(width, units)} long`,
        count: 1,
        unit: 'piece',
        note: `planed to fill the groove at the lip${of}`,
        priced: null,
      },
    ]
  })
  return strips.length === 0
    ? []
    : [
        ...strips,
        {
          part: 'fittings',
          what: `thin nails, ${ownUnits('30 mm (1 1/4 in)', units)}`,
          count: 1,
          unit: 'box',
          note: 'hold the strip at the lip',
          priced: null,
        },
      ]
}
