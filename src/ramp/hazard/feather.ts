import type { QuarterDesign, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, rounded, same } from '../check/offer.ts'
import { feather } from '../check/practice.ts'
import { bringing, manyFaults, orWays, quietThat, toeKey } from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'

/** A blunt one, which a saw leaves whole; common practice, no source. mm */
export const blunt = { mm: 12, in: inch / 2 } as const

/** A side that runs out to nothing at the toe. */
export const featherFindings = (design: QuarterDesign, units: Units): readonly Draft[] => {
  if (design.toe > feather + same) return []
  return [
    warn('toe-thin', (trial: Trial) => {
      const thicker = quietThat(trial, design, toeKey, blunt[units], 1, units, ['skin-free'])
      const said =
        design.toe > same
          ? `a toe of ${measured(design.toe, units)} is a feather edge`
          : 'without a toe the side runs out to a feather edge'
      return tell(
        `${said} that splinters and is soon trodden off; ${rounded(blunt[units], units)} is blunt enough: `,
        orWays(
          [
            thicker &&
              told`a toe of ${thicker} or more${bringing(trial, design, toeKey, thicker, ['skin-free', 'the free end of the skin is weak'])}`,
          ],
          `take a higher toe; ${manyFaults}`,
        ),
      )
    }),
  ]
}
