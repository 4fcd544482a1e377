import type { Units } from '../../design/design.ts'
import type { PageKind } from '../../drawing/set-plan.ts'
import type { Laying } from '../../job/laying.ts'
import type { ReadLaying } from '../../job/laying-words.ts'
import { countWords } from '../../length/count-words.ts'
import { showLength } from '../../length.ts'
import { squareSideIn } from '../../page/pages/square-page.ts'
import type { LaidSet } from '../../page/set/set.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import { wrap } from './wrap.ts'

type PageUse = 'taped' | 'read first' | 'cut out'

/** What each kind of page is for. */
const uses: Readonly<Record<PageKind, PageUse>> = {
  map: 'read first',
  square: 'read first',
  trial: 'read first',
  parts: 'read first',
  tile: 'taped',
  strip: 'cut out',
}

export interface PlotReport {
  /** the name of the file */
  readonly out: string
  readonly units: Units
  readonly set: LaidSet
  readonly laying: ReadLaying
  /** why this cover */
  readonly why: string | null
  /** what flats need, which have no pages */
  readonly flats: string | null
}

/** What was written, and what to do with it. */
export const plotReport = ({ out, units, set, laying, why, flats }: PlotReport): string => {
  const count = (isOne: (kind: PageKind) => boolean): number =>
    set.pages.filter(({ kind }) => isOne(kind)).length
  const used = (use: PageUse): number => count((kind) => uses[kind] === use)
  const cut = used('cut out')
  const tiles = set.plan.pages.filter(({ kind }) => kind === 'tile')
  // a side on one page has nothing to join it to
  const joined = new Set(tiles.map(({ pattern }) => pattern)).size < tiles.length
  const counted = [
    `${countWords(used('taped'), 'tile')} to ${joined ? 'tape together' : 'trace from'}`,
    `${used('read first')} to read first`,
    ...(cut > 0 ? [`${cut} of strips to cut out`] : []),
  ].join(', ')
  const square = squareSideIn(sheetWindow(laying.sheet))
  const side = showLength(square, units, { unit: true })
  return [
    `${out}: ${countWords(set.pages.length, 'page')} on ${laying.sheet.paper.name}, set ${set.code}: ${counted}.`,
    ...(laying.pack ? [packedWords(set.saved)] : []),
    ...(laying.gaugedMargins ? [wrap(marginWords(laying))] : []),
    ...(why === null ? [] : [wrap(`Cover ${set.plan.cover}: ${why}.`)]),
    ...(flats === null ? [] : [wrap(flats)]),
    `1. Print at 100 %, never "fit to page", one-sided.`,
    `2. Measure the test square with a steel rule: ${square} mm${units === 'in' ? ` (${side})` : ''} both ways.`,
    count((kind) => kind === 'trial' || kind === 'parts') > 0
      ? '3. Saw the lip trial in scrap and try it with the real pipe.'
      : '3. Read the map: it shows where each page lies.',
    joined
      ? '4. Trim and tape the pages in the order of their numbers, each row to its snap line; check the distances on the map.'
      : `4. Lay ${tiles.length > 1 ? 'each' : 'the'} page by its snap line; check the distances on the map.`,
    '5. Trace, saw on the WASTE side, and use the first side as pattern for the rest.',
    '',
  ].join('\n')
}

/** The margins of a gauged printer in the order of --margin; in mm, as its combs are read. */
const marginWords = ({ printer, sheet: { margins } }: Laying): string => {
  const { top, right, bottom, left } = margins
  return `Margins as gauged for ${printer} and 1 mm more: ${top}, ${right}, ${bottom}, ${left} mm (top, right, bottom, left).`
}

const packedWords = (saved: number): string =>
  saved === 0
    ? 'Packed: no page is saved, so each small part keeps its own.'
    : `Packed: small parts share pages, which saves ${countWords(saved, 'page')}.`
