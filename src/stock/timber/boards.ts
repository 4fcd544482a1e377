import type { Design, Price, Stock, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { showLength } from '../../length.ts'
import { same } from '../../ramp/check/offer.ts'
import { samePriced } from '../priced.ts'
import type { TimberPart } from '../timber-parts.ts'
import { type Cutting, cutBoards } from './cutting.ts'
import type { SawJob } from './saw-job.ts'

/** One length of timber, and what is cut from it. Lengths mm. */
export interface SawnBoard {
  /** thickness and depth */
  readonly section: readonly [number, number]
  readonly length: number
  /** from its squared end, the longest first */
  readonly cuts: readonly Cut[]
  /** what is left behind the last cut */
  readonly left: number
}

export interface Cut {
  readonly length: number
  readonly mark: string
  /** what it is ripped to; null where it is used as bought */
  readonly ripped: readonly [number, number] | null
}

/** Boards of one section. */
export interface SectionPlan {
  readonly section: readonly [number, number]
  readonly boards: readonly SawnBoard[]
  /** whether no other plan buys less */
  readonly least: boolean
}

/** `38 × 89` */
export const sectionWords = (section: SectionPlan['section'], units: Units): string =>
  section.map((size) => showLength(size, units, { decimals: 1 })).join(' × ')

/** Cut off an end to square it, the kerf in it; common practice, no source. mm */
export const squared = { mm: 5, in: (3 * inch) / 16 } as const

/** Lengths of one kind: sums of a drawing differ in their last bits. */
const alike = (mm: number): number => Math.round(mm * 1e4) / 1e4

/** Least wood bought, or least money where every length of the section has its price. Null where a piece is longer than every board. */
export const sawTimber = (parts: readonly TimberPart[], design: Design): readonly SectionPlan[] | null => {
  const { stock, units, prices } = design
  const longest = Math.max(...stock.timber)
  if (parts.some(({ length }) => length > longest + same)) return null
  const sections: TimberPart[][] = []
  for (const part of parts) {
    const own = sections.find(([first]) => areAlike(first!.section, part.section))
    if (own) own.push(part)
    else sections.push([part])
  }
  return sections.map((own) => sawSection(own, stock, units, prices?.all ?? []))
}

type Section = SectionPlan['section']

const areAlike = ([a, b]: Section, [c, d]: Section): boolean => alike(a) === alike(c) && alike(b) === alike(d)

const sawSection = (
  parts: readonly TimberPart[],
  stock: Stock,
  units: Units,
  prices: readonly Price[],
): SectionPlan => {
  const { section } = parts[0]!
  const lengths = [...new Set(stock.timber)]
  const costs = lengths.map((length) => timberPrice(prices, section, length))
  const priced = costs.every((cost) => cost !== null)
  const wantedLengths = [...new Set(parts.map(({ length }) => alike(length)))].sort((a, b) => b - a)
  const left = wantedLengths.map((length) => parts.filter((part) => alike(part.length) === length))
  const ends = squared[units]
  const cut = (boards: SawJob['boards']): Cutting =>
    cutBoards({
      wanted: wantedLengths.map((length, i) => ({ length, count: left[i]!.length })),
      boards,
      kerf: stock.kerf,
      ends,
    })
  const all = cut(lengths.map((length, i) => ({ length, cost: priced ? costs[i]! : length })))
  const { patterns, cost, bound } = priced ? all : withPrices(all, lengths, costs, wantedLengths[0]!, cut)
  const taken = left.map(() => 0)
  const boards = patterns.map(({ board, counts }): SawnBoard => {
    const cuts = counts.flatMap((count, i) =>
      Array.from({ length: count }, (): Cut => {
        const { mark, length, ripped } = left[i]![taken[i]!++]!
        return { length, mark, ripped }
      }),
    )
    const length = lengths[board]!
    const sawn = cuts.reduce((sum, cut) => sum + cut.length + stock.kerf, 0)
    return { section, length, cuts, left: Math.max(0, length - ends - sawn) }
  })
  return {
    section,
    boards: boards.sort((a, b) => b.length - a.length || b.cuts.length - a.cuts.length),
    least: cost <= bound + 1e-6,
  }
}

/** As little wood of lengths that have a price, of one of them where that will do, the cheapest first; else the same. */
const withPrices = (
  all: Cutting,
  lengths: readonly number[],
  costs: readonly (number | null)[],
  longest: number,
  cut: (boards: SawJob['boards']) => Cutting,
): Cutting => {
  const known = costs.flatMap((cost, i) => (cost === null ? [] : [i]))
  const some = known.length > 1 ? [...known.map((i) => [i]), known] : known.map((i) => [i])
  const money = ({ patterns }: Cutting): number => patterns.reduce((sum, { board }) => sum + costs[board]!, 0)
  return (
    some
      .filter((own) => own.some((i) => lengths[i]! >= longest - same))
      .map((own): Cutting => {
        const plan = cut(own.map((i) => ({ length: lengths[i]!, cost: lengths[i]! })))
        const patterns = plan.patterns.map((one) => ({ ...one, board: own[one.board]! }))
        return { ...plan, patterns, bound: all.bound }
      })
      .filter(({ cost }) => cost <= all.cost + same)
      .sort((a, b) => money(a) - money(b))[0] ?? all
  )
}

const timberPrice = (
  prices: readonly Price[],
  section: readonly [number, number],
  length: number,
): number | null =>
  prices.find(({ of }) => samePriced(of, { kind: 'timber', section, length }))?.amount ?? null
