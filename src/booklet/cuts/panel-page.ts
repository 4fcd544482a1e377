import type { Units } from '../../design/design.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { type LaidTable, layTable, tableFits, tableHeight, tableMarks } from '../../drafting/table.ts'
import { titleBlock, titleBlockHeight } from '../../drafting/title-block.ts'
import { type Drawing, group, text } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import type { Box } from '../../geometry/bounds.ts'
import { layoutMap, layoutSize } from '../../page/sheet/sheet.ts'
import type { Panel, SheetPanels } from '../../stock/panel/panels.ts'
import { panelPicture } from './panel-picture.ts'
import { drawnNote, faceNoteOnPaper, panelName } from './panel-words.ts'
import { lieWords, pieceCells, stepWords } from './piece-words.ts'

export interface PanelPagesFacts {
  readonly title: string
  readonly units: Units
  /** several ramps: pieces are told with theirs */
  readonly several: boolean
  readonly sheets: readonly SheetPanels[]
}

export interface PanelPage {
  readonly drawing: Drawing
  readonly label: string
}

const gap = 5
/** The drawing leaves them so much; what is more goes on. mm */
const leastTables = 42
const caution =
  'Eyes, ears and lungs covered; both sides of each cut held up; blade and cord watched; unplug before a change.'

/** A page for each panel, read with its right edge down: the panel to scale, its pieces, the order of cuts. Long tables go on. */
export const panelPages = (window: Box, facts: PanelPagesFacts): readonly PanelPage[] => {
  const { width, height } = layoutSize(window, 'landscape')
  const panels = facts.sheets.flatMap((own) => own.panels)
  return panels.flatMap((panel) =>
    contents(panel, panels.length, width, height, facts).map((marks, i) => ({
      drawing: [group(layoutMap(window, 'landscape'), marks)],
      label: i === 0 ? `panel ${panel.number}` : `panel ${panel.number}, page ${i + 1}`,
    })),
  )
}

const contents = (
  panel: Panel,
  count: number,
  width: number,
  height: number,
  { title, units, several }: PanelPagesFacts,
): readonly Drawing[] => {
  const { number, pieces, steps } = panel
  const head = paragraph({ x: 0, y: height }, `Panel ${panelName(panel, count, units)}`, {
    layer: 'note',
    width,
    size: 5,
    face: 'bold',
  })
  const sub = paragraph(
    { x: 0, y: head.bottom },
    `${drawnNote} Lengths in ${units === 'mm' ? 'mm' : 'inches, + is 1/32 more, – is 1/32 less'}.`,
    { layer: 'note', width, size: 2.5 },
  )
  const table = (
    columns: Parameters<typeof layTable>[0]['columns'],
    rows: readonly (readonly string[])[],
    room: number,
  ) => layTable({ columns, rows }, room, draftStyle)
  const sawn = table(
    [
      { head: 'cut', kind: 'right', face: 'bold' },
      { head: 'in this order', kind: 'words' },
    ],
    steps.map((step, i) => [String(i + 1), stepWords(step, panel, units)]),
    (width - gap) * 0.4,
  )
  const curved = pieces.some(({ second }) => second !== null)
  const own = table(
    [
      { head: 'piece', kind: 'words', face: 'bold' },
      { head: 'what', kind: 'words' },
      { head: 'as it lies', kind: 'words' },
      { head: 'from left', kind: 'figure' },
      { head: 'from below', kind: 'figure' },
      ...(curved ? [{ head: 'it lies with', kind: 'words' } as const] : []),
    ],
    pieces.map((piece) => [
      ...pieceCells(piece, several, units),
      ...(curved ? [lieWords(piece, units)] : []),
    ]),
    width - sawn.width - 2 * gap,
  )
  const lefts = [0, width - sawn.width]
  const foot = titleBlockHeight(draftStyle.size)
  const face = faceNoteOnPaper(pieces)
  const words = paragraph({ x: 0, y: 0 }, [...(face ? [face] : []), caution].join(' '), {
    layer: 'note',
    width,
    size: 2.5,
  })
  const low = foot + 2 - words.bottom
  const tables = Math.max(tableHeight(own), tableHeight(sawn))
  const room = sub.bottom - low - Math.min(tables, leastTables) - 2 * gap
  const picture = panelPicture(panel, { width, height: room }, units)
  const box = drawingBounds(picture.marks)!
  const top = sub.bottom - 3
  const at = { x: (width - (box.x1 - box.x0)) / 2 - box.x0, y: top - box.y1 }
  const under = top - (box.y1 - box.y0) - gap
  const footMarks = (page: number, pages: number): Drawing => [
    ...titleBlock(
      { x0: 0, y0: 0, x1: width, y1: foot },
      [
        { name: 'design', value: title },
        { name: 'panel', value: `${number} of ${count}` },
        { name: 'scale', value: picture.scale },
        { name: 'page', value: `${page} of ${pages}` },
      ],
      draftStyle,
    ),
    group([1, 0, 0, 1, 0, foot + 2 - words.bottom], words.marks),
  ]
  const split = paged([own, sawn], under - low, head.bottom - gap - low)
  return split.map((parts, page) => [
    ...(page === 0
      ? [...head.marks, ...sub.marks, group([1, 0, 0, 1, at.x, at.y], picture.marks)]
      : [text('note', { x: 0, y: height - 5 }, 5, `Panel ${number}, continued`, { face: 'bold' })]),
    ...parts.flatMap(({ from, count: rows }, i) =>
      rows === 0
        ? []
        : tableMarks(
            [own, sawn][i]!,
            { x: lefts[i]!, y: page === 0 ? under : head.bottom - gap },
            from,
            rows,
          ),
    ),
    ...footMarks(page + 1, split.length),
  ])
}

interface Share {
  readonly from: number
  readonly count: number
}

/** Rows of tables side by side on a first page with so much room under its drawing, the rest on further ones. mm */
const paged = (tables: readonly LaidTable[], first: number, later: number): readonly (readonly Share[])[] => {
  const pages: (readonly Share[])[] = []
  let done = tables.map(() => 0)
  do {
    const room = pages.length === 0 ? first : later
    const share = tables.map((one, i) => ({ from: done[i]!, count: tableFits(one, done[i]!, room) }))
    const held = pages.length > 0 && share.every(({ count }) => count === 0)
    // a row that is higher than a page stands alone
    const given = held
      ? tables.map((one, i) => ({ from: done[i]!, count: Math.min(1, one.rows.length - done[i]!) }))
      : share
    pages.push(given)
    done = given.map(({ from, count }) => from + count)
  } while (tables.some((one, i) => done[i]! < one.rows.length))
  return pages
}
