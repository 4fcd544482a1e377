import type { Design } from '../../design/design.ts'
import { sameSheet } from '../../design/panel-sizes.ts'
import { countWords } from '../../length/count-words.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import { nothingKnown } from '../../stock/panel/known.ts'
import { type LaidSheet, type SheetGroup, sheetGroups } from '../../stock/panel/panels.ts'
import { mostPieces, sheetsOf } from '../../stock/panel/sheets.ts'
import type { Parts } from '../../stock/parts.ts'
import type { SheetPart } from '../../stock/sheet-part.ts'
import { sawTimber, sectionWords } from '../../stock/timber/boards.ts'
import { leastByArea, leastInRows } from './least-panels.ts'

/** How many a design takes of what is bought, each by its noun and what it is of: `panel of 9 plywood`, `timber`. */
export type Takes = ReadonlyMap<string, number>

export interface TakesCounter {
  /** null where some part has no panel or timber */
  readonly takes: (design: Design, parts: Parts) => Takes | null
  /** whether it may take less of something than that; a look at areas, where laying it out takes most of the time */
  readonly mayTakeLess: (design: Design, parts: Parts, than: Takes) => boolean
  /** whether its sheet may take a panel less with parts as much smaller as a figure that is moved makes them; most fill no second panel */
  readonly mayGain: (part: Pick<SheetPart, 'sheet'>) => boolean
}

/** A value is tried where a part loses a twentieth at most; parts beside it may lose more, but leave so much of themselves. */
const leftOfPart = 0.75

/** Sheets and timbers that are those of `laid`, or of a design asked about before, are not laid and sawn anew: most values change few parts. */
export const takesCounter = (of: Design, laid: readonly LaidSheet[]): TakesCounter => {
  const keyOf = ({ stock }: Design, { sheet, parts }: SheetGroup): string =>
    JSON.stringify([stock, sheet, parts.map(({ outline, grain, faced }) => [outline, grain, faced])])
  const known = new Map<string, number | null>(
    laid.map((sheet) => [keyOf(of, sheet), sheet.lost.length > 0 ? null : panelCount(sheet)]),
  )
  const found = nothingKnown()
  const panelsOf = (design: Design, group: SheetGroup): number | null => {
    const key = keyOf(design, group)
    const before = known.get(key)
    if (before !== undefined) return before
    const now = sheetsOf(design, { sheets: group.parts, timbers: [] }, found)
    const count = 'faults' in now ? null : now.sheets.reduce((sum, sheet) => sum + panelCount(sheet), 0)
    known.set(key, count)
    return count
  }
  const sawnBefore = new Map<string, ReturnType<typeof sawTimber>>()
  /** few values change what is sawn from timber */
  const timberOf = (design: Design, timbers: Parts['timbers']): ReturnType<typeof sawTimber> => {
    const { stock, units, prices } = design
    const key = JSON.stringify([
      stock.timber,
      stock.kerf,
      units,
      prices,
      timbers.map(({ section, length }) => [section, length]),
    ])
    const found = sawnBefore.get(key)
    if (found !== undefined) return found
    const now = sawTimber(timbers, design)
    sawnBefore.set(key, now)
    return now
  }
  /** null where some timber is not to be had, or there are too many pieces */
  const sawn = (
    design: Design,
    { sheets, timbers }: Parts,
    panels: (group: SheetGroup) => number | null,
  ): Takes | null => {
    if (sheets.length + timbers.length > mostPieces) return null
    const timber = timberOf(design, timbers)
    if (timber === null) return null
    const takes = new Map<string, number>()
    for (const group of sheetGroups(sheets)) {
      const count = panels(group)
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
  const gaining = laid.filter((group) => panelCount(group) > leastByArea(of, group, leftOfPart))
  return {
    takes: (design, parts) => sawn(design, parts, (group) => panelsOf(design, group)),
    mayTakeLess: (design, parts, than) => {
      const least = sawn(
        design,
        parts,
        (group) =>
          known.get(keyOf(design, group)) ?? Math.max(leastByArea(design, group), leastInRows(design, group)),
      )
      return least !== null && lessOf(than, least).some(([, gain]) => gain > 0)
    },
    mayGain: ({ sheet }) => gaining.some((group) => sameSheet(group.sheet, sheet)),
  }
}

const panelCount = ({ panels }: LaidSheet): number => panels.reduce((sum, { clamped }) => sum + clamped, 0)

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
  const gains = lessOf(before, after)
  return gains.some(([, gain]) => gain < 0) ? null : gains.filter(([, gain]) => gain > 0)
}

const lessOf = (before: Takes, after: Takes): readonly (readonly [noun: string, count: number])[] =>
  [...new Set([...before.keys(), ...after.keys()])].map(
    (noun) => [noun, (before.get(noun) ?? 0) - (after.get(noun) ?? 0)] as const,
  )

/** `2 panels of 9 plywood` */
export const takenWords = ([noun, count]: readonly [noun: string, count: number]): string => {
  const [first, ...rest] = noun.split(' ')
  return [countWords(count, first!), ...rest].join(' ')
}
