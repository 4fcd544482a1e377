import type { Design } from '../../design/design.ts'
import { countWords } from '../../length/count-words.ts'
import { type SheetGroup, type SheetPanels, sheetGroups } from '../../stock/panel/panels.ts'
import { sheetWords } from '../../stock/panel/sheet-words.ts'
import { mostPieces, sheetsOf } from '../../stock/panel/sheets.ts'
import type { Parts } from '../../stock/parts.ts'
import { sawTimber, sectionWords } from '../../stock/timber/boards.ts'

/** How many a design takes of what is bought, each by its noun and what it is of: `panel of 9 plywood`, `timber`. */
export type Takes = ReadonlyMap<string, number>

/** null where some part has no panel or timber. */
export type TakesCounter = (design: Design, parts: Parts) => Takes | null

/** Sheets whose parts are those of `laid`, or of a design asked about before, are not laid anew: most values change few parts. */
export const takesCounter = (of: Design, laid: readonly SheetPanels[]): TakesCounter => {
  const keyOf = ({ stock }: Design, { sheet, parts }: SheetGroup): string =>
    JSON.stringify([stock, sheet, parts.map(({ outline, grain, faced }) => [outline, grain, faced])])
  const known = new Map<string, number | null>(
    laid.map((sheet) => [keyOf(of, sheet), sheet.lost.length > 0 ? null : panelCount(sheet)]),
  )
  const panelsOf = (design: Design, group: SheetGroup): number | null => {
    const key = keyOf(design, group)
    const found = known.get(key)
    if (found !== undefined) return found
    const now = sheetsOf(design, { sheets: group.parts, timbers: [] })
    const count = 'faults' in now ? null : now.sheets.reduce((sum, sheet) => sum + panelCount(sheet), 0)
    known.set(key, count)
    return count
  }
  return (design, { sheets, timbers }) => {
    if (sheets.length + timbers.length > mostPieces) return null
    const timber = sawTimber(timbers, design)
    if (timber === null) return null
    const takes = new Map<string, number>()
    for (const group of sheetGroups(sheets)) {
      const count = panelsOf(design, group)
      if (count === null) return null
      takes.set(`panel of ${sheetWords(group.sheet, design.units)}`, count)
    }
    for (const { section, boards } of timber)
      takes.set(
        timber.length > 1 ? `timber of ${sectionWords(section, design.units)}` : 'timber',
        boards.length,
      )
    return takes.set('joint of sides', jointsOf(sheets))
  }
}

const panelCount = ({ panels }: SheetPanels): number => panels.reduce((sum, { clamped }) => sum + clamped, 0)

/** Where pieces meet that no panel holds whole, in all sides and ribs. */
const jointsOf = (parts: Parts['sheets']): number => {
  const sides = parts.flatMap(({ piece }) => (piece ? [piece.of] : []))
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
