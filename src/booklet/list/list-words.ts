import type { Prices, Units } from '../../design/design.ts'
import { showLength } from '../../length.ts'
import { rounded } from '../../ramp/check/offer.ts'
import { type Cost, moneyWords } from '../../stock/list/cost.ts'
import type { CostedLine, ListPart } from '../../stock/list/line.ts'
import type { Supplies } from '../../stock/stock.ts'

/** Heads of the list's parts. */
const partWords: Readonly<Record<ListPart, string>> = {
  sheets: 'Sheets',
  timber: 'Timber',
  pipe: 'Pipe',
  screws: 'Screws',
  fittings: 'Fittings',
  finish: 'Paint, paper',
  tools: 'Tools',
  protection: 'Protection',
}

export const partHead = (part: ListPart, list: readonly Pick<CostedLine, 'priced'>[]): string =>
  part === 'finish' && list.some(({ priced }) => priced?.kind === 'word' && priced.word === 'glue')
    ? 'Glue, paint, paper'
    : partWords[part]

/** `2 panels`, `1 box of 100`, `3 m` */
export const amountWords = ({ count, unit }: Pick<CostedLine, 'count' | 'unit'>): string => {
  if (count === 1 || ['m', 'ft'].includes(unit)) return `${count} ${unit}`
  const [word, ...rest] = unit.split(' ')
  return [String(count), word === 'box' ? 'boxes' : `${word}s`, ...rest].join(' ')
}

/** Shorter ends are firewood, mm. */
const leastKept = 300

/** What is left that is worth keeping, the largest first: `38 × 89 timber: 1180 mm, 2 of 430 mm`, `18 plywood: 620 × 1220 mm`. */
export const leftWords = (
  { timber, panels, pipes }: Pick<Supplies, 'timber' | 'panels' | 'pipes'>,
  units: Units,
): readonly string[] => [
  ...(panels ?? []).flatMap(({ name, rests }) =>
    leftLine(
      name,
      [...rests]
        .sort((a, b) => b[0] * b[1] - a[0] * a[1])
        .filter(([short, long]) => short >= leastKept / 2 && long >= leastKept)
        .map(([short, long]) => `${showLength(short, units)} × ${rounded(long, units)}`),
    ),
  ),
  ...timber.flatMap(({ section, boards }) =>
    leftLine(
      `${section.map((mm) => showLength(mm, units, { decimals: 1 })).join(' × ')} timber`,
      boards
        .map(({ left }) => left)
        .filter((left) => left >= leastKept)
        .sort((a, b) => b - a)
        .map((left) => rounded(left, units)),
    ),
  ),
  ...pipes.flatMap(({ name, lefts }) =>
    leftLine(
      name,
      lefts.filter((left) => left >= leastKept).map((left) => rounded(left, units)),
    ),
  ),
]

const leftLine = (name: string, kept: readonly string[]): readonly string[] => {
  const words = [...new Set(kept)].map((one) => {
    const count = kept.filter((own) => own === one).length
    return count === 1 ? one : `${count} of ${one}`
  })
  return words.length === 0 ? [] : [`${name}: ${words.join(', ')}`]
}

/** The whole cost, what it lacks and what it did not need. */
export const costWords = (cost: Cost, prices: Prices): readonly string[] => [
  `${cost.without.length === 0 ? 'all of it' : 'as far as it has prices'}: ${moneyWords(cost.total, prices)}`,
  ...(cost.without.length > 0 ? [`without a price: ${cost.without.join('; ')}`] : []),
  ...(cost.unused.length > 0 ? [`prices that nothing here needs: ${cost.unused.join('; ')}`] : []),
]
