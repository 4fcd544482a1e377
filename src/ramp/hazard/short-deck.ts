import type { QuarterDesign, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { type Finding, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { offering, set, tell } from '../check/told.ts'

/** On a shorter deck nobody stands; common practice, no source. mm */
const footing = { mm: 100, in: 4 * inch } as const

/** What its number was more likely meant in. */
const meant = { mm: { name: 'cm', mm: 10 }, in: { name: 'ft', mm: 12 * inch } } as const

/** A deck so short that its number was most likely meant in a larger unit. */
export const shortDeckFindings = ({ back }: QuarterDesign, units: Units): readonly Finding[] => {
  if (back.from !== 'deck' || back.value >= footing[units] - same) return []
  const { name, mm } = meant[units]
  const count = back.value / (units === 'mm' ? 1 : inch)
  if (Math.abs(count - Math.round(count)) > same) return []
  return [
    warn(
      'deck-short',
      tell(
        `a deck of ${measured(back.value, units)} is a ledge that nobody stands on; `,
        offering(
          `did you mean ${Math.round(count)} ${name} (${measured(Math.round(count) * mm, units)})?`,
          set('deck', `${Math.round(count)} ${name}`),
        ),
      ),
    ),
  ]
}
