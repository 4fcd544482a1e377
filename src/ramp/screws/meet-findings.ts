import type { RampDesign, Units } from '../../design/design.ts'
import { numberList, wordList } from '../../length/word-list.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured } from '../check/offer.ts'
import { type Key, orWays } from '../check/remedy.ts'
import { tell } from '../check/told.ts'
import { longerStuds, studLength } from '../frame/bays.ts'
import { betweenScrews } from './clearance.ts'
import type { EndScrews } from './end-screws.ts'

/** Ends of timbers in which screws meet: walls so near to each other that those from above find no room beyond their points. */
export const meetFindings = <D extends RampDesign>(
  design: D,
  ends: readonly EndScrews[],
  studs: number,
  /** the width of such a ramp */
  key: Key<D>,
  endsOf: (changed: D) => readonly EndScrews[],
  units: Units,
): readonly Draft<D>[] => {
  const met = ends.flatMap(({ clear }, i) => (clear ? [] : [i + 1]))
  if (met.length === 0) return []
  const [under, behind] = [met.filter((n) => n <= studs), met.filter((n) => n > studs)]
  const names = [
    ...(under.length > 0 ? [numberList('stud', under)] : []),
    ...(behind.length > 0 ? [numberList('timber', behind)] : []),
  ]
  return [
    warn('screws-meet', (trial: Trial<D>) => {
      const clears = (changed: D): boolean => trial(changed) && endsOf(changed).every(({ clear }) => clear)
      return tell(
        `in ${wordList(names)}, only ${measured(studLength(design), units)} long, screws from above come nearer than ${measured(betweenScrews, units)} to those in the ends; `,
        orWays(
          longerStuds(clears, design, key, design.width, 'fewer sides', units),
          'drill for those from above where the drill meets no steel',
        ),
      )
    }),
  ]
}
