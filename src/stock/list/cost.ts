import type { Design, Priced, Prices, Stock } from '../../design/design.ts'
import { samePriced } from '../priced.ts'
import type { CostedLine, ListLine } from './line.ts'

/** What the list comes to, as far as it has prices. */
export interface Cost {
  readonly total: number
  /** what has no price, tools and protection aside */
  readonly without: readonly string[]
  /** prices that nothing on the list needs, as they were typed */
  readonly unused: readonly string[]
}

/** A sum of money without the last bits of a sum. */
const cents = (amount: number): number => Math.round(amount * 100) / 100

export const costLines = (
  lines: readonly ListLine[],
  { prices, stock }: Pick<Design, 'prices' | 'stock'>,
): { readonly lines: readonly CostedLine[]; readonly cost: Cost | null } => {
  const all = prices?.all ?? []
  /** one of the panel's size before one of every size */
  const ranked = all.toSorted((a, b) => Number(isOfAny(a.of)) - Number(isOfAny(b.of)))
  const costed = lines.map((line): CostedLine => {
    const each = ranked.find(({ of }) => line.priced && samePriced(of, line.priced))?.amount ?? null
    return { ...line, each, cost: each === null ? null : cents(each * line.count) }
  })
  if (!prices) return { lines: costed, cost: null }
  const owned = new Set(['tools', 'protection'])
  return {
    lines: costed,
    cost: {
      total: cents(costed.reduce((sum, { cost }) => sum + (cost ?? 0), 0)),
      without: costed.filter(({ cost, part }) => cost === null && !owned.has(part)).map(({ what }) => what),
      unused: all
        .filter(
          ({ of }) =>
            !lines.some(
              ({ priced }) => priced && (samePriced(of, priced) || compared(of, priced, all, stock)),
            ),
        )
        .map(({ what }) => what),
    },
  }
}

const isOfAny = (of: Priced): boolean => of.kind === 'sheet' && of.size === null

/** A length of the stock that was not taken, as others of its section cost less: known where all of them have a price; or a size of panel of the stock. */
const compared = (a: Priced, b: Priced, all: Prices['all'], { timber, panels }: Stock): boolean =>
  a.kind === 'sheet'
    ? b.kind === 'sheet' &&
      samePriced({ ...a, size: null }, b) &&
      panels.some(({ sheet, size }) => samePriced(a, { kind: 'sheet', sheet, size }))
    : a.kind === 'timber' &&
      b.kind === 'timber' &&
      samePriced({ ...a, length: b.length }, b) &&
      timber.some((length) => samePriced({ ...a, length }, a)) &&
      timber.every((length) => all.some(({ of }) => samePriced(of, { ...a, length })))

/** `62.00 EUR`, `$58.00`: the currency where it was typed. */
export const moneyWords = (amount: number, { before, behind }: Pick<Prices, 'before' | 'behind'>): string =>
  `${before}${amount.toFixed(2)}${behind}`
