import { type Drawing, stroke, text } from '../../../drawing/drawing.ts'
import { pathOf } from '../../../geometry/path.ts'
import { type FixedBlock, part, sizes, stack, tableStyle } from '../block.ts'
import type { Book } from '../book.ts'

/** Parts by the builder's day; those that a booklet has are told with their pages. */
const parts = [
  ['buying', 'What to buy'],
  ['first', 'Before the first cut'],
  ['cutting', 'Cutting: sides, panels, timber, checks'],
  ['framing', 'Framing: screws, where timbers go, steps'],
  ['skin', 'Skin, layer by layer'],
  ['coping', 'Coping: the pipe'],
  ['deck', 'Deck and toe'],
  ['flat', 'Flat'],
  ['finishing', 'Finishing'],
  ['moving', 'Storing and moving'],
  ['care', 'Looking after it'],
] as const

const row = 4.8
/** Between the two columns, mm. */
const between = 8

/** On which page each part begins, in two columns. */
export const contents = ({ width, asked }: Book): FixedBlock => {
  const wanted = parts.filter(([name]) => asked.includes(name))
  const column = (width - between) / 2
  const size = sizes.body * 0.93
  const rows: FixedBlock = {
    kind: 'fixed',
    height: Math.ceil(wanted.length / 2) * row + 1,
    withNext: false,
    marks: ({ x, y }, pages) => {
      const found = wanted.flatMap(([name, said]) => {
        const page = pages(name)
        return page === null ? [] : [{ said, page: `${page}` }]
      })
      const half = Math.ceil(found.length / 2)
      return found.flatMap(({ said, page }, i): Drawing => {
        const left = x + (i < half ? 0 : column + between)
        const line = y - (i % half) * row - size - 0.6
        const under = line - 1.3
        return [
          text('note', { x: left, y: line }, size, said),
          text('note', { x: left + column, y: line }, size, page, { align: 'right' }),
          stroke(
            'note',
            pathOf({ x: left, y: under }, { x: left + column, y: under }),
            tableStyle.lines.thin,
          ),
        ]
      })
    },
  }
  return wanted.length === 0 ? { ...rows, height: 0 } : stack([part('In this booklet, by page', width), rows])
}
