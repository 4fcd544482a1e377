import type { RampDesign, Units } from '../../design/design.ts'
import { numberList, wordList } from '../../length/word-list.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured } from '../check/offer.ts'
import { firstThat, type Key, orWays } from '../check/remedy.ts'
import { offering, set, tell, told } from '../check/told.ts'
import { studLength } from '../frame/bays.ts'
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
      const { sides, width } = design
      const wider = firstThat(clears, design, key, width, 1, units)
      const fewer = Array.from({ length: sides.count - 2 }, (_, i) => sides.count - 1 - i).find((count) =>
        clears({ ...design, sides: { ...sides, count } }),
      )
      return tell(
        `in ${wordList(names)}, only ${measured(studLength(design), units)} long, screws from above come nearer than ${measured(betweenScrews, units)} to those in the ends; `,
        orWays(
          [
            wider && told`make it ${wider} or more`,
            fewer === undefined
              ? null
              : offering(`take fewer sides (sides: { count: ${fewer} })`, set('sides.count', `${fewer}`)),
          ],
          'drill for those from above where the drill meets no steel',
        ),
      )
    }),
  ]
}
