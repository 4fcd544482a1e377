import type { SetPlan } from '../../drawing/set-plan.ts'
import { nearWord } from '../../length/near.ts'
import { harmless, quote } from '../../length/quote.ts'
import { type Picked, pageWordsOf, tilesInOrder } from '../../read/pick-pages.ts'
import type { SetPdfFault } from '../../read/set-pdf.ts'
import { tileGrids } from '../../read/tile-grid.ts'

/** Why a file cannot be reprinted from, and what to do. */
export const faultWords = (file: string, fault: SetPdfFault): string => {
  const again = 'or, with the design file, traceply reprint DESIGN --set CODE TILE'
  switch (fault.kind) {
    case 'empty':
      return `${file} is empty; take the PDF that plot wrote, ${again}`
    case 'not-pdf':
      return `${file} is not a PDF; take the PDF that plot wrote. For a design file add the set's code: --set CODE`
    case 'torn':
      return `${file} is torn or damaged: a part of it is missing or altered; copy or download it again, ${again}`
    case 'no-plan':
      return `${file} holds no plan of traceply, so its pages cannot be told; take the PDF as plot wrote it (printing to PDF loses the plan), ${again}`
    case 'saved-anew':
      return `${file} was saved anew by another program, which left out ${fault.lost}; take the PDF as plot wrote it, ${again}`
    case 'edited':
      return `the plan in ${file} is not the one that plot wrote: its seal does not match, it was edited since; take the PDF as plot wrote it, ${again}`
    case 'locked':
      return `${file} is locked with a password or against changes; unlock it, or take the PDF as plot wrote it, ${again}`
    case 'unproven':
      return `the pages of ${file} do not say which they are: they were drawn anew by another program, or by an older traceply; take the PDF as plot wrote it, ${again}`
    case 'unbounded':
      return `${file} holds more than any set; take the PDF that plot wrote, ${again}`
    case 'newer':
      return `${file} was made by a newer traceply (plan version ${fault.version}); install that one`
    default:
      return fault satisfies never
  }
}

/** Everything that is wrong with the pages asked for, and where the tiles lie; null where nothing is. */
export const pickWords = (file: string, plan: SetPlan, picked: Picked): string | null => {
  const { unknown, absent } = picked
  if (unknown.length === 0 && absent.length === 0) return null
  const words = pageWordsOf(plan).map(({ word }) => word)
  const hint = (said: string, near: readonly string[]): string => {
    if (near.length > 0) return `; near it: ${near.join(', ')}`
    const word = nearWord(said, words)
    return word === undefined ? '' : `; did you mean ${word}?`
  }
  return [
    ...unknown.map(
      ({ said, near }) => `there is no page ${quote(said)} in set ${plan.set}${hint(said, near)}`,
    ),
    ...absent.map(
      (said) =>
        `${quote(said)} is a page of set ${plan.set}, but ${plan.reprint ? `${file}, a reprint, does not hold it; take the PDF of the whole set` : `${file} does not hold it any more; take the PDF as plot wrote it`}`,
    ),
    setWords(plan),
  ].join('\n')
}

/** What may be asked for: a small map of the tiles, and the other pages. */
export const setWords = (plan: SetPlan): string => {
  const others = pageWordsOf(plan).map(({ word, count }) =>
    count > 1 ? `${word} (${count}: ${word}-1 …)` : word,
  )
  const tiles = tilesInOrder(plan)
  const named = tiles.some(({ tile }, i) => tile !== `${i + 1}`)
  return [
    ...tileGrids(plan).flatMap(({ pattern, rows }) => [
      `${harmless(pattern)}, top row first:`,
      ...rows.map((row) => `  ${row}`),
    ]),
    ...(named ? [`tiles also by their taping numbers, 1 to ${tiles.length}`] : []),
    ...(others.length === 0 ? [] : [`other pages: ${others.join(', ')}`]),
  ].join('\n')
}
