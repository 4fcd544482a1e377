import type { Units } from '../../design/design.ts'
import { type Drawing, fill, group, stroke, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Box } from '../../geometry/bounds.ts'
import { rectangle } from '../../geometry/path.ts'
import { showLength } from '../../length.ts'
import { layoutMap, layoutSize } from '../../page/sheet/sheet.ts'
import type { PanelPage } from './panel-page.ts'
import { boardWords, type NumberedBoard, partWords, timberNote } from './timber-words.ts'

export interface TimberPagesFacts {
  readonly title: string
  readonly units: Units
  readonly several: boolean
  readonly boards: readonly NumberedBoard[]
}

/** Heights of a board's bar and of its words, mm. */
const bar = 7
const size = 2.6
const gap = 3

/** Boards to one scale, one under the other, read with the right edge of the page down as the panels are. */
export const timberPages = (window: Box, facts: TimberPagesFacts): readonly PanelPage[] => {
  const { width, height } = layoutSize(window, 'landscape')
  return contents(facts, width, height).map((marks, i) => ({
    drawing: [group(layoutMap(window, 'landscape'), marks)],
    label: i === 0 ? 'timber' : `timber, page ${i + 1}`,
  }))
}

const contents = (
  { title, units, several, boards }: TimberPagesFacts,
  width: number,
  height: number,
): readonly Drawing[] => {
  if (boards.length === 0) return []
  const scale = width / Math.max(...boards.map(({ board }) => board.length))
  const pages: Drawing[] = []
  const head = (words: string): { readonly marks: Drawing; readonly bottom: number } => {
    const own = paragraph({ x: 0, y: height }, words, { layer: 'note', width, size: 5, face: 'bold' })
    const sub = paragraph(
      { x: 0, y: own.bottom },
      `${timberNote} Lengths in ${units === 'mm' ? 'mm' : 'inches, + is 1/32 more, – is 1/32 less'}. Tick a piece when it is sawn.`,
      { layer: 'note', width, size },
    )
    return { marks: [...own.marks, ...sub.marks], bottom: sub.bottom - gap }
  }
  let { marks, bottom } = head(`${title}: timber`)
  for (const numbered of boards) {
    const words = boardLine(numbered, several, units, width, bottom)
    const low = words.bottom - bar - gap
    if (low < 0) {
      pages.push(marks)
      ;({ marks, bottom } = head(`${title}: timber, continued`))
    }
    const placed = low < 0 ? boardLine(numbered, several, units, width, bottom) : words
    marks = [...marks, ...placed.marks, ...barMarks(numbered, scale, placed.bottom - bar, units)]
    bottom = placed.bottom - bar - gap
  }
  return [...pages, marks]
}

/** `Timber 3: 38 × 89, 2400 long. T5 stud 3; T6 stud 4; left 22` */
const boardLine = (
  { number, board, cuts }: NumberedBoard,
  several: boolean,
  units: Units,
  width: number,
  top: number,
) =>
  paragraph(
    { x: 0, y: top },
    `Timber ${number}: ${boardWords(board, units)}. ${cuts
      .map(({ part }) => `${part.mark} ${partWords(part, several, units)}`)
      .join('; ')}${board.left >= 1 ? `; left ${showLength(board.left, units)}` : ''}`,
    { layer: 'note', width, size },
  )

const barMarks = ({ board, cuts }: NumberedBoard, scale: number, y: number, units: Units): Drawing => {
  const squared =
    board.length - board.left - cuts.reduce((end, cut) => Math.max(end, cut.from + cut.length), 0)
  const start = Math.max(0, Math.min(squared, board.length)) / 2
  return [
    fill('note', rectangle(0, y, board.length * scale, y + bar), 0.9),
    stroke('note', rectangle(0, y, board.length * scale, y + bar), { width: 0.25 }),
    ...cuts.flatMap(({ part, from, length }): Drawing => {
      const [x0, x1] = [(start + from) * scale, (start + from + length) * scale]
      const words = [`${part.mark}  ${showLength(length, units)}`, part.mark, ''].find(
        (one) => textWidth(one, size, 'bold') <= x1 - x0 - 6,
      )!
      return [
        fill('note', rectangle(x0, y, x1, y + bar), 1),
        stroke('note', rectangle(x0, y, x1, y + bar), { width: 0.5 }),
        stroke('note', rectangle(x0 + 1.5, y + 2, x0 + 1.5 + size, y + 2 + size), { width: 0.25 }),
        text('note', { x: x0 + 2.5 + size, y: y + 2.3 }, size, words, { face: 'bold' }),
      ]
    }),
  ]
}
