import type { Design } from '../../design/design.ts'
import { countWords } from '../../length/count-words.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import type { SheetPanels } from '../../stock/panel/panels.ts'
import { sheetWords } from '../../stock/panel/sheet-words.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { type Parts, partsOf } from '../../stock/parts.ts'
import { sawTimber } from '../../stock/timber/boards.ts'

/** How many a design takes of what is bought, each by its noun and what it is of: `panel of 9 plywood`, `timber`. */
export type Takes = ReadonlyMap<string, number>

/** null where some part has no panel or timber. */
export const designTakes = (design: Design, solved: WholeDesign): Takes | null => {
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  return 'faults' in laid ? null : takesOf(design, parts, laid.sheets)
}

/** null where some part has no timber. */
export const takesOf = (
  design: Design,
  { timbers }: Pick<Parts, 'timbers'>,
  sheets: readonly SheetPanels[],
): Takes | null => {
  const timber = sawTimber(timbers, design)
  if (timber === null) return null
  return new Map([
    ...sheets.map(
      ({ sheet, panels }) =>
        [
          `panel of ${sheetWords(sheet, design.units)}`,
          panels.reduce((sum, { clamped }) => sum + clamped, 0),
        ] as const,
    ),
    ...timber.flatMap(({ boards }) => [['timber', boards.length] as const]),
    ['joint of sides', jointsOf(sheets)],
  ])
}

/** Where pieces meet that no panel holds whole, in all sides and ribs. */
const jointsOf = (sheets: readonly SheetPanels[]): number => {
  const sides = sheets.flatMap(({ parts }) => parts.flatMap(({ piece }) => (piece ? [piece.of] : [])))
  return sides.length - new Set(sides).size
}

/** What the one takes less than the other; null where it takes more of anything. */
export const savedFrom = (
  before: Takes,
  after: Takes,
): readonly (readonly [noun: string, count: number])[] | null => {
  const nouns = [...new Set([...before.keys(), ...after.keys()])]
  const gains = nouns.map((noun) => [noun, (before.get(noun) ?? 0) - (after.get(noun) ?? 0)] as const)
  return gains.some(([, gain]) => gain < 0) ? null : gains.filter(([, gain]) => gain > 0)
}

/** `2 panels of 9 plywood` */
export const takenWords = ([noun, count]: readonly [noun: string, count: number]): string => {
  const [first, ...rest] = noun.split(' ')
  return [countWords(count, first!), ...rest].join(' ')
}
