import type { QuarterDesign, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { footing } from '../check/practice.ts'
import { offering, set, tell } from '../check/told.ts'

/** What its number was more likely meant in. */
const meant = { mm: { name: 'cm', mm: 10 }, in: { name: 'ft', mm: 12 * inch } } as const

/** A deck so short that its number was most likely meant in a larger unit: asked where a ramp comes of that. */
export const shortDeckFindings = (ramp: QuarterDesign, units: Units): readonly Draft[] => {
  const { back } = ramp
  if (back.from !== 'deck' || back.value >= footing[units] - same) return []
  const { name, mm } = meant[units]
  const count = Math.round(back.value / (units === 'mm' ? 1 : inch))
  if (Math.abs(back.value - count * (units === 'mm' ? 1 : inch)) > same) return []
  return [
    warn('deck-short', (trial: Trial) =>
      tell(
        `a deck of ${measured(back.value, units)} is a ledge that nobody stands on; `,
        trial({ ...ramp, back: { ...back, value: count * mm } })
          ? offering(
              `did you mean ${count} ${name} (${measured(count * mm, units)})?`,
              set('deck', `${count} ${name}`),
            )
          : 'make it longer',
      ),
    ),
  ]
}
