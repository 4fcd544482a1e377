import type { FlatDesign, Units } from '../../design/design.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offerSteps } from '../check/offer.ts'
import { firstThat, flatEveryKey, orWays } from '../check/remedy.ts'
import { sheetList } from '../check/sheet-words.ts'
import { tell, told } from '../check/told.ts'
import { studLength } from '../frame/bays.ts'
import type { Stud } from '../frame/stud.ts'
import { type Borne, weakest } from './bearing.ts'
import { loadWords } from './break-through.ts'

/** A flat's skin that may break between its studs. Its ends lie on studs. */
export const flatLoadFindings = (
  design: FlatDesign,
  studs: readonly Stud[],
  units: Units,
): readonly Draft<FlatDesign>[] => {
  const timbers = studs.map(({ at, width }) => ({ from: at - width / 2, to: at + width / 2 }))
  const borne: Borne = { sheets: design.skin, from: 0, to: design.length, timbers, width: studLength(design) }
  const { between } = weakest(borne)
  if (!between) return []
  return [
    warn('skin-load', (trial: Trial<FlatDesign>) => {
      const { every } = design.studs
      const closer = firstThat(trial, design, flatEveryKey, every - offerSteps[units] / 2, -1, units)
      return tell(
        `the skin (${sheetList(design.skin, units)}) spans ${measured(between.to - between.from, units)} from stud to stud and ${loadWords(between, units)}`,
        orWays([closer && told`studs every ${closer}`], 'take a thicker skin and closer studs'),
      )
    }),
  ]
}
