import type { CostedLine } from '../../stock/list/line.ts'

/** A spreadsheet may read a sign outside ASCII as two. */
const plain = (words: string): string => words.replaceAll('×', 'x')

/** The list as cells of a spreadsheet, its head first; money without its sign. */
export const listCells = (list: readonly CostedLine[]): readonly (readonly string[])[] => [
  ['part', 'what', 'count', 'unit', 'note', 'each', 'cost'],
  ...list.map(({ part, what, count, unit, note, each, cost }) => [
    part,
    plain(what),
    String(count),
    unit,
    plain(note),
    each === null ? '' : each.toFixed(2),
    cost === null ? '' : cost.toFixed(2),
  ]),
]
