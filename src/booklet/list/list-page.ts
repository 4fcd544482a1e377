import { draftStyle } from '../../drafting/line-types.ts'
import { layTable, tableFits, tableHeight, tableMarks } from '../../drafting/table.ts'
import { type Drawing, group, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { moneyWords } from '../../stock/list/cost.ts'
import type { CostedLine } from '../../stock/list/line.ts'
import { listParts } from '../../stock/list/line.ts'
import type { ListFacts } from './list-text.ts'
import { amountWords, costWords, leftWords, partHead } from './list-words.ts'

/** Figures large enough to be read in a shop, mm. */
const style = { ...draftStyle, size: 3 }
const gap = 4
/** Heads of parts stand over two rows of theirs at least. */
const leastRows = 2

/** The list with boxes to tick, page after page; what the ramp leaves over and costs at its end. */
export const listPages = (window: Box, facts: ListFacts): readonly Drawing[] => {
  const { title, units, prices, stock } = facts
  const width = window.x1 - window.x0
  const height = window.y1 - window.y0
  const note = { layer: 'note', width, size: style.size } as const
  const pages: Drawing[] = []
  let marks: Drawing = []
  let top = height
  const turn = (): void => {
    pages.push(marks)
    const again = paragraph({ x: 0, y: height }, `${title}: what to buy, continued`, note)
    marks = again.marks
    top = again.bottom - gap
  }
  const head = paragraph({ x: 0, y: top }, `${title}: what to buy`, { ...note, size: 5, face: 'bold' })
  const sub = paragraph(
    { x: 0, y: head.bottom },
    `Lengths in ${units === 'mm' ? 'mm' : 'inches'}. Tick what lies in the car; sheets and timber differ from their names: measure before you pay.`,
    note,
  )
  marks = [...head.marks, ...sub.marks]
  top = sub.bottom - gap
  const table = tableOf(stock.list, facts, width)
  for (const part of listParts) {
    const first = stock.list.findIndex((line) => line.part === part)
    const count = stock.list.filter((line) => line.part === part).length
    for (let from = first; from >= 0 && from < first + count; ) {
      const rest = first + count - from
      const fits = Math.min(rest, tableFits(table, from, top))
      if (fits < Math.min(leastRows, rest)) {
        turn()
        continue
      }
      marks = [
        ...marks,
        // in the head of the table, which has no words over its first columns
        text('note', { x: 0, y: top - style.size * 1.5 }, style.size * 1.15, partHead(part, stock.list), {
          face: 'bold',
        }),
        ...tableMarks(table, { x: 0, y: top }, from, fits),
      ]
      top -= tableHeight(table, from, fits) + gap / 2
      from += fits
    }
  }
  top -= gap / 2
  const left = leftWords(stock, units)
  const words = [
    ...(left.length > 0 ? [`Left over: ${left.join('; ')}.`] : []),
    ...(stock.cost && prices ? costWords(stock.cost, prices).map((line) => `Cost, ${line}.`) : []),
  ]
  for (const line of words) {
    const own = paragraph({ x: 0, y: top }, line, note)
    if (own.bottom < 0) turn()
    const placed = own.bottom < 0 ? paragraph({ x: 0, y: top }, line, note) : own
    marks = [...marks, ...placed.marks]
    top = placed.bottom
  }
  pages.push(marks)
  return pages.map((page) => [group(affineTranslate(window.x0, window.y0), page)])
}

const tableOf = (lines: readonly CostedLine[], { prices }: ListFacts, width: number) => {
  const money = (amount: number | null): string =>
    amount === null || !prices ? '' : moneyWords(amount, prices)
  return layTable(
    {
      columns: [
        { head: '', kind: 'box' },
        { head: '', kind: 'words', face: 'bold' },
        { head: '', kind: 'words' },
        { head: '', kind: 'words' },
        ...(prices
          ? [{ head: 'each', kind: 'right' } as const, { head: 'cost', kind: 'right' } as const]
          : []),
      ],
      rows: lines.map((line) => [
        '',
        amountWords(line),
        line.what,
        line.note,
        ...(prices ? [money(line.each), money(line.cost)] : []),
      ]),
    },
    width,
    style,
  )
}
