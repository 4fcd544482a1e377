import { wordList } from '../../length/word-list.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { screwCount } from '../../stock/screws.ts'
import { timbersOf } from '../views/plan-view.ts'
import { type BookFacts, hasSkin } from './book.ts'

/** How long it takes, from so many pieces and a few minutes for each; common practice, no source. */
export interface WorkHours {
  readonly least: number
  readonly most: number
  readonly how: string
}

/** Minutes for one of each: quick, slow. */
const minutes = {
  /** trim, tape, check */
  page: [4, 8],
  /** trace, saw, smooth */
  side: [35, 75],
  /** saw to length, set, screw both ends */
  timber: [10, 20],
  /** saw a sheet of skin or deck, mark, lay */
  sheet: [25, 50],
  screw: [0.5, 1],
  /** drill, seat and screw a pipe */
  pipe: [40, 90],
} as const

type Kind = keyof typeof minutes

const names: Readonly<Record<Kind, readonly [string, string]>> = {
  page: ['page to tape', 'pages to tape'],
  side: ['side or rib', 'sides and ribs'],
  timber: ['timber', 'timbers'],
  sheet: ['sheet', 'sheets'],
  screw: ['screw', 'screws'],
  pipe: ['pipe', 'pipes'],
}

const sheetsOf = (ramp: SolvedRamp): number => {
  const laid = [...ramp.skin, ...(ramp.deckBoard ? [ramp.deckBoard] : [])]
  return laid.reduce((sum, { pieces, widths }) => sum + pieces.length * widths.length, 0)
}

/** What its sheets are laid for. */
const layWords = (ramps: readonly SolvedRamp[]): string =>
  wordList([
    ...(ramps.some(hasSkin) ? ['skin'] : []),
    ...(ramps.some(({ deckBoard }) => deckBoard) ? ['deck'] : []),
  ])

export const workHours = ({ solved: { ramps }, stock, tiles }: BookFacts): WorkHours => {
  const sum = (of: (ramp: SolvedRamp) => number): number => ramps.reduce((all, ramp) => all + of(ramp), 0)
  const counts: Readonly<Record<Kind, number>> = {
    page: tiles,
    side: sum(({ design }) => design.sides.count),
    timber: sum((ramp) => timbersOf(ramp).length * (ramp.design.sides.count - 1)),
    sheet: sum(sheetsOf),
    screw: screwCount(stock.screws),
    pipe: sum((ramp) => (ramp.coping ? 1 : 0)),
  }
  const kinds = (Object.keys(minutes) as Kind[]).filter((kind) => counts[kind] > 0)
  const hours = (i: 0 | 1): number =>
    kinds.reduce((all, kind) => all + counts[kind] * minutes[kind][i], 0) / 60
  const name = (kind: Kind): string =>
    `${counts[kind]} ${names[kind][counts[kind] === 1 ? 0 : 1]}${kind === 'sheet' ? ` of ${layWords(ramps)}` : ''}`
  return {
    least: Math.max(1, Math.round(hours(0))),
    most: Math.ceil(hours(1)),
    how: `${kinds.map(name).join(', ')}, each with a quick and a slow time of common practice`,
  }
}
