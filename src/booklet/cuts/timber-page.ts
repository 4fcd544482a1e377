import type { Units } from '../../design/design.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { titleBlock, titleBlockHeight } from '../../drafting/title-block.ts'
import { type Drawing, group } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { showLength } from '../../length.ts'
import { layoutMap, layoutSize } from '../../page/sheet/sheet.ts'
import { boardHeight, boardView } from './board-view.ts'
import type { UnnumberedPage } from './panel-page.ts'
import { boardWords, type NumberedBoard, partWords, timberNote } from './timber-words.ts'

export interface TimberPagesFacts {
  readonly title: string
  readonly units: Units
  readonly several: boolean
  readonly boards: readonly NumberedBoard[]
  /** first part of the set code */
  readonly code: string
}

/** Height of the words, mm. */
const size = 2.6
const gap = 3
/** Between boards where that saves a page, mm. */
const close = [2.2, 1.4] as const

/** Boards to one scale, one under the other, read with the right edge of the page down as the panels are. */
export const timberPages = (window: Box, facts: TimberPagesFacts): readonly UnnumberedPage[] => {
  const { width, height } = layoutSize(window, 'landscape')
  const foot = titleBlockHeight(draftStyle.size)
  const laid = [gap, ...close].map((between) => contents(facts, width, height, foot + gap, between))
  const fewest = laid.reduce((best, own) => (own.length < best.length ? own : best))
  return fewest.map((marks, i) => ({
    draw: (number) => [
      group(layoutMap(window, 'landscape'), [
        ...marks,
        ...titleBlock(
          { x0: 0, y0: 0, x1: width, y1: foot },
          [
            { name: 'design', value: facts.title },
            { name: 'part', value: 'timber' },
            { name: 'set code begins', value: facts.code },
            { name: 'page', value: number },
          ],
          draftStyle,
        ),
      ]),
    ],
    label: i === 0 ? 'timber' : `timber, page ${i + 1}`,
  }))
}

const contents = (
  { title, units, several, boards }: TimberPagesFacts,
  width: number,
  height: number,
  /** what stays free below, mm */
  least: number,
  /** between boards, mm */
  between: number,
): readonly Drawing[] => {
  if (boards.length === 0) return []
  const scale = width / Math.max(...boards.map(({ board }) => board.length))
  const pages: Drawing[] = []
  const head = (words: string): { readonly marks: Drawing; readonly bottom: number } => {
    const own = paragraph({ x: 0, y: height }, words, { layer: 'note', width, size: 5, face: 'bold' })
    const sub = paragraph(
      { x: 0, y: own.bottom },
      `${timberNote(units)} Lengths in ${units === 'mm' ? 'mm' : 'inches, + is 1/32 more, – is 1/32 less'}. Tick a piece when it is sawn.`,
      { layer: 'note', width, size },
    )
    return { marks: [...own.marks, ...sub.marks], bottom: sub.bottom - gap }
  }
  let { marks, bottom } = head(`${title}: timber`)
  for (const numbered of boards) {
    const words = boardLine(numbered, several, units, width, bottom)
    const low = words.bottom - boardHeight - between
    if (low < least) {
      pages.push(marks)
      ;({ marks, bottom } = head(`${title}: timber, continued`))
    }
    const placed = low < least ? boardLine(numbered, several, units, width, bottom) : words
    marks = [...marks, ...placed.marks, ...barMarks(numbered, scale, placed.bottom - boardHeight, units)]
    bottom = placed.bottom - boardHeight - between
  }
  return [...pages, marks]
}

/** `Board 3: 38 × 89, 2400 long. T5 stud 3; T6 stud 4; left 22` */
const boardLine = (
  { number, board, cuts }: NumberedBoard,
  several: boolean,
  units: Units,
  width: number,
  top: number,
) =>
  paragraph(
    { x: 0, y: top },
    `Board ${number}: ${boardWords(board, units)}. ${cuts
      .map(({ part }) => `${part.mark} ${partWords(part, several, units)}`)
      .join('; ')}${board.left >= 1 ? `; rest ${showLength(board.left, units)}` : ''}`,
    { layer: 'note', width, size },
  )

const barMarks = ({ board, cuts }: NumberedBoard, scale: number, y: number, units: Units): Drawing => [
  group(
    affineTranslate(0, y),
    boardView(
      {
        ...board,
        cuts: cuts.map(({ part: { mark }, from, length }) => ({
          from,
          length,
          names: [`${mark}  ${showLength(length, units)}`, mark],
        })),
      },
      scale,
    ),
  ),
]
