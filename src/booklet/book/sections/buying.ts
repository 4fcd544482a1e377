import { listParts } from '../../../stock/list/line.ts'
import { screwBoxes } from '../../../stock/list/list.ts'
import { screwCount } from '../../../stock/screws.ts'
import { amountWords, costWords, leftWords, partHead } from '../../list/list-words.ts'
import { gap, head, table, words } from '../block.ts'
import type { Book } from '../book.ts'
import type { Section } from '../pages.ts'

/** The shopping list with boxes to tick, what is left of it, and its cost where the design has prices. */
export const buying = (book: Book): Section => {
  const { width, stock, units, design, piped } = book
  const left = leftWords(stock, units)
  return {
    name: 'buying',
    title: 'What to buy',
    unparted: true,
    blocks: [
      head('What to buy', width),
      words(
        'Tick what lies in the car. Sheets and timber differ from their names: measure before you pay.',
        width,
      ),
      table(
        {
          columns: [
            { head: '', kind: 'box' },
            { head: '', kind: 'words', face: 'bold' },
            { head: 'how many', kind: 'words' },
            { head: 'what', kind: 'words' },
            { head: '', kind: 'words' },
          ],
          rows: listParts.flatMap((part) =>
            stock.list
              .filter((line) => line.part === part)
              .map((line, i) => [
                '',
                i === 0 ? partHead(part, stock.list) : '',
                amountWords(line),
                line.what,
                line.note,
              ]),
          ),
        },
        width,
      ),
      gap(2),
      words(
        `Screws: ${screwCount(stock.screws)} are needed in all, and a tenth more is bought: by the box of ${screwBoxes.count}, up to ${screwBoxes.loose} by the piece.`,
        width,
      ),
      ...(left.length > 0
        ? [
            words(
              `Left over, the largest piece of ${piped ? 'each panel, board and pipe' : 'each panel and board'}: ${left.join('; ')}. Smaller strips come beside them.`,
              width,
            ),
          ]
        : []),
      ...(stock.cost && design.prices
        ? costWords(stock.cost, design.prices).map((line) => words(`Cost, ${line}.`, width))
        : []),
    ],
  }
}
