import type { QuarterDesign, Units } from '../../design/design.ts'
import { thinSide } from '../../design/section.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, note } from '../check/check.ts'
import { measured, rounded, same } from '../check/offer.ts'
import type { Stud } from '../frame/stud.ts'

/** So much wider than between two studs at their spacing a gap is said; our own choice. */
const wider = 1.1

/** Gaps that a stud leaves which would meet the first or the last, or was moved. */
export const studGapFindings = (
  { studs: { every, foot, section } }: QuarterDesign,
  studs: readonly Stud[],
  units: Units,
): readonly Draft[] => {
  const gaps = studs.slice(1).flatMap((stud, i) => {
    const below = studs[i]!
    const usual = (foot && stud.at <= foot.to + same ? foot.every : every) - thinSide(section)
    const gap = stud.at - stud.width / 2 - below.at - below.width / 2
    return usual > same && gap > wider * usual + same ? [{ below, stud, gap, usual }] : []
  })
  if (gaps.length === 0) return []
  const words = gaps.map(
    ({ below, stud, gap, usual }) =>
      `${measured(gap, units)} between the studs ${rounded(below.at, units)} and ${rounded(stud.at, units)} up the curve (${measured(usual, units)} at their spacing)`,
  )
  return [
    note(
      'stud-gap',
      `the skin spans more than elsewhere: ${wordList(words)}; set one more there if you want it stiff`,
    ),
  ]
}
