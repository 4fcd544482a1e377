import type { Units } from '../../design/design.ts'
import { showThickness } from '../../length/thickness.ts'
import { wordList } from '../../length/word-list.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { rounded } from '../check/offer.ts'
import { timberLabel } from '../frame/timber.ts'
import type { Splice } from './splice.ts'

/** Where the pieces of a side meet, or why they cannot. `studs`: how many are along the curve. `stored`: ramps that stand between its sides when they are put away. */
export const spliceFindings = (
  splices: readonly Splice[] | null,
  studs: number,
  thickness: number,
  stored: readonly string[],
  units: Units,
): readonly Finding[] => {
  if (splices === null)
    return [
      warn(
        'splice',
        stored.length > 0
          ? `no panel holds a side whole, and in pieces it has no room for plates over their joints, since ${wordList(stored)} ${stored.length > 1 ? 'are' : 'is'} stored inside; see to the panels`
          : 'no panel holds a side whole, and no stud or timber has room for a plate over a joint of pieces that panels hold; see to the panels, or set studs wider apart',
      ),
    ]
  if (splices.length === 0) return []
  return [
    note(
      'splice',
      `each side is made of ${splices.length + 1} pieces: ${spliceWords(splices, studs, units)}; ` +
        `there timbers are ${showThickness(thickness, units, { unit: true })} shorter at each plate`,
    ),
  ]
}

/** `they meet on stud 14, 1905 along the floor, over the joint inside a plate 400 × 590`; behind so many studs are the lip's timbers. */
export const spliceWords = (splices: readonly Splice[], studs: number, units: Units): string =>
  `they meet on ${wordList(
    splices.map(
      ({ timber, foot, plate: { size } }) =>
        `${timberLabel(timber, studs)}, ${rounded(foot.x, units)} along the floor, a plate ${size.map((mm) => rounded(mm, units)).join(' × ')} inside over the joint`,
    ),
  )}`
