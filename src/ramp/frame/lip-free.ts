import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinWide } from '../../design/section.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offerSteps } from '../check/offer.ts'
import { depthKey, firstThat, orWays } from '../check/remedy.ts'
import { tell, told } from '../check/told.ts'
import type { Stud } from './stud.ts'

/** Skin that reaches no farther past its last stud needs none there; common practice, no source. mm */
const overhang = 20

/** Says how much of the curve's upper `end`, mm along it, no stud carries. */
export const lipFreeFindings = (
  ramp: QuarterDesign,
  studs: readonly Stud[],
  end: number,
  units: Units,
): readonly Draft[] => {
  const last = studs.at(-1)
  if (!last || last.role === 'lip') return []
  const free = end - (last.at + last.width / 2)
  if (free <= overhang) return []
  return [
    warn('stud-lip', (trial: Trial) => {
      const [thin, wide] = thinWide(ramp.studs.section)
      const range = { least: Math.max(thin, depthKey.range.least), most: wide }
      const depth = firstThat(trial, ramp, { ...depthKey, range }, wide - offerSteps[units] / 2, -1, units)
      return tell(
        `no stud fits at the lip, so the curve's last ${measured(free, units)} hang free; `,
        orWays([depth && told`studs ripped to ${depth} deep find room`], 'set blocks there'),
      )
    }),
  ]
}
