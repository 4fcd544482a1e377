import { text } from '../../drawing/drawing.ts'
import { screwDiameter, screwHead, screwSize } from '../../ramp/screws/screw-sort.ts'
import { bySize } from '../../stock/screws.ts'
import { screwMarks } from '../views/acts/screw-view.ts'
import { type Block, drawn, part, stack } from './block.ts'
import type { Book } from './book.ts'

const row = 9.4
/** A letter before a screw, its name behind it, mm. */
const [before, after] = [9, 4] as const
const size = 2.8

/** Every size of screw at true size, so that one in the hand finds its letter. */
export const screwFigure = (book: Book): Block => {
  const { width, units, stock, fine } = book
  const all = bySize(stock.screws).flatMap((one) =>
    one.length === null ? [] : [{ ...one, length: one.length }],
  )
  const height = all.length * row
  return stack([
    part('The screws at true size, printed at 100 %: write its letter on each box', width),
    drawn(
      all.flatMap(({ use, length, count, uses, letter }, i) => {
        const y = height - (i + 0.5) * row
        return [
          text('note', { x: 2, y: y - 1.8 }, 3.6, letter, { face: 'bold' }),
          ...screwMarks({ x: before, y }, length, screwDiameter(use, units), screwHead(use)),
          text(
            'note',
            { x: before + length + after, y: y - size / 2 },
            size,
            `${screwSize(use, length, units, fine)}, ${screwHead(use)}: ${count}, ${uses.join(', ')}`,
          ),
        ]
      }),
      height,
    ),
  ])
}
