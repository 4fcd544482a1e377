import { capital } from '../../../../length/capital.ts'
import { numberList, wordList } from '../../../../length/word-list.ts'
import type { FixedRow, Layer } from '../../../../ramp/skin/layer.ts'
import { seamStudsOf } from '../../../../ramp/skin/seam-studs.ts'
import type { Book } from '../../book.ts'
import type { MarkedSheet } from '../screw-table.ts'

export type SkinSheet = MarkedSheet<FixedRow>

/** Where the stud lines are drawn on the bench: on each sheet from its own lower edge. */
export const linesWords = (
  { show }: Book,
  { pieces, seams, rows }: Layer,
  sheets: readonly SkinSheet[],
  curved: boolean,
): string => {
  const before = curved ? ' before you bend it' : ''
  const offStuds = rows.some(({ on }) => on === 'between')
  if (offStuds && pieces.length === 1)
    return `Draw every row of the table across ${sheets.length > 1 ? 'each' : 'the'} sheet${before}, from its ${curved ? 'toe end' : 'end'}.`
  const lined = sheets[0]!.marks.map(({ at }) => show(at))
  const listed = new Set(sheets.flatMap(({ rows }) => rows.map(({ at }) => show(at))))
  if (pieces.length === 1 && lined.every((at) => listed.has(at)))
    return `Draw the stud lines on ${sheets.length > 1 ? 'each' : 'the'} sheet${before}, from its ${curved ? 'toe end' : 'end'}: where the table has a row into a stud.`
  if (pieces.length === 1)
    return `Draw the stud lines on ${sheets.length > 1 ? 'each' : 'the'} sheet${before}: ${lined.join(', ')} from its ${curved ? 'toe end' : 'end'}.`
  const each = pieces.map(({ from }) => {
    const course = sheets.filter(({ up }) => up.from === from)
    const own = course[0]!.marks
    const studs = numberList(
      'stud',
      own.map(({ of }) => of + 1),
    )
    return `${wordList(course.map(({ mark }) => mark))} ${own.length > 0 ? `at ${own.map(({ at }) => show(at)).join(', ')} (${studs})` : 'none'}`
  })
  const met = [...new Set(seams.flatMap(seamStudsOf))].filter(
    (i) => !offStuds || rows.some(({ on, stud }) => on === 'seam' && stud === i),
  )
  const inTable = sheets.every(({ marks, rows }) =>
    marks.every(({ at, of }) => met.includes(of) || rows.some((row) => show(row.at) === show(at))),
  )
  const under =
    met.length === 0
      ? ''
      : ` ${capital(
          numberList(
            'stud',
            met.map((i) => i + 1),
          ),
        )} ${met.length > 1 ? 'lie' : 'lies'} under a seam: the rows there stand along the edges of both sheets, as in the table.`
  return inTable || offStuds
    ? `Draw every row of the table across its sheet${before}, from its own lower edge.${under}`
    : `Draw the stud lines on each sheet${before}, from its own lower edge: ${each.join('; ')}.${under}`
}
