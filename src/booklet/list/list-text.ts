import type { Prices, Units } from '../../design/design.ts'
import { textColumns, wrapLine } from '../../length/words.ts'
import { moneyWords } from '../../stock/list/cost.ts'
import { type CostedLine, listParts } from '../../stock/list/line.ts'
import type { Supplies } from '../../stock/stock.ts'
import { amountWords, costWords, leftWords, partHead } from './list-words.ts'

export interface ListFacts {
  readonly title: string
  readonly units: Units
  readonly prices: Prices | null
  readonly stock: Supplies & { readonly list: readonly CostedLine[] }
}

/** What is bought by measure, not by the piece. */
const measures: readonly string[] = ['litre', 'quart', 'm', 'ft']

/** The shopping list as plain text in lines of so many letters, a box to tick before each line. */
export const listText = ({ title, units, prices, stock }: ListFacts, columns = textColumns): string => {
  const { list, cost } = stock
  const counts = list.map(amountWords)
  const wide = Math.max(...counts.map((words) => words.length))
  const line = (i: number): readonly string[] => {
    const { what, note, unit, each, cost: own } = list[i]!
    const money =
      prices && own !== null
        ? `, ${moneyWords(each!, prices)} ${measures.includes(unit) ? `a ${unit}` : 'each'}: ${moneyWords(own, prices)}`
        : ''
    return wrapLine(
      `  [ ] ${counts[i]!.padEnd(wide)}  ${what}${note === '' ? '' : ` (${note})`}${money}`,
      columns,
      wide + 8,
    )
  }
  const left = leftWords(stock, units)
  return [
    `${title}: what to buy (lengths in ${units === 'mm' ? 'mm' : 'inches'})`,
    ...listParts.flatMap((part) => {
      const own = list.flatMap((one, i) => (one.part === part ? line(i) : []))
      return own.length === 0 ? [] : ['', partHead(part, list), ...own]
    }),
    ...(left.length > 0
      ? ['', 'Left over', ...left.flatMap((words) => wrapLine(`  ${words}`, columns, 4))]
      : []),
    ...(cost && prices
      ? ['', 'Cost', ...costWords(cost, prices).flatMap((words) => wrapLine(`  ${words}`, columns, 4))]
      : []),
    '',
  ].join('\n')
}
