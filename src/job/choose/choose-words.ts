import { countWords } from '../../length/count-words.ts'
import { massRange } from '../../length/mass.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { asksGuard, guardWords } from '../../ramp/hazard/guard.ts'
import { bandOf, usualAge } from './riders.ts'
import type { ChosenRamp } from './trial.ts'
import type { Wishes } from './wishes.ts'

/** A row a ramp under its heading, columns aligned. */
export const rampTable = (ramps: readonly ChosenRamp[], { units }: Wishes): string => {
  const show = (mm: number): string => showLength(mm, units)
  const rows = [
    ['', 'height', 'radius', 'lip', '', 'length', 'panels', 'timbers', 'paper', 'weight'],
    ...ramps.map(({ height, radius, lip, word, length, panels, boards, pages, weight }, i) => [
      `${i + 1}`,
      show(height),
      show(radius),
      showDegrees(lip, 0),
      word,
      show(length),
      `${panels}`,
      `${boards}`,
      `${pages}`,
      massRange(weight, units),
    ]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          column === 4 || column === 9 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}

/** What the rows were chosen by, and what their columns count. One sentence or two a line. */
export const chosenNotes = (ramps: readonly ChosenRamp[], wishes: Wishes): readonly string[] => {
  const { units, paper, rider, height, panels, garage, door, ceiling } = wishes
  const show = (mm: number): string => showLength(mm, units, { unit: true })
  const unsaid = [...(door ? ['the door'] : []), ...(ceiling === null ? [] : ['the ceiling'])]
  const age = rider?.kind === 'age' ? rider.age : rider === null && height === null ? usualAge : null
  const usual = age === null ? null : bandOf(age).heights[units].map((n) => `${n}`)
  return [
    'Words for a lip go by radius over height: 3 very mellow, 2.5 mellow, 2 middle, 1.75 lively, 1.5 quick, 1.33 steep. They, and what suits whom, are custom, no source.',
    ...(age !== null && usual
      ? [
          `${rider === null ? `Nothing says who rides, so for ${countWords(age, 'year')}: ` : `For ${countWords(age, 'year')} `}decks of ${usual.join(' to ')} ${units} are custom; what the child rides well now is the better measure.`,
        ]
      : []),
    ...(age !== null && age <= 10
      ? [
          'Under five years no skating, five to ten with an adult close by (paediatricians’ published advice, from memory).',
        ]
      : []),
    `Panels are those of the whole cutting list${panels === null ? '' : `; the sides come from ${panels} at most`}. Timbers are the lengths to buy, paper the pages of ${paper} to tape.`,
    ...(ramps.some((ramp) => asksGuard(ramp.height)) ? [`With a deck ${guardWords(units)}.`] : []),
    ...(garage || unsaid.length === 0
      ? []
      : [
          `The designs leave out ${wordList(unsaid)}: a file says ${unsaid.length > 1 ? 'them' : 'it'} only with the size of the garage, so give that too.`,
        ]),
    ...(ceiling === null
      ? []
      : [
          `Under ${show(ceiling)} a rider on the deck has ${headRoom(ramps, ceiling, show)}: measure who stands there, on the board.`,
        ]),
    ...(ramps.length < 3
      ? [
          `Only ${countWords(ramps.length, 'ramp')} of those tried ${ramps.length === 1 ? 'keeps' : 'keep'} all that.`,
        ]
      : []),
  ]
}

const headRoom = (ramps: readonly ChosenRamp[], ceiling: number, show: (mm: number) => string): string => {
  const rooms = [...new Set(ramps.map(({ height }) => show(ceiling - height)))]
  return rooms.length === 1 ? rooms[0]! : `${rooms.at(-1)} on the last to ${rooms[0]} on the first`
}
