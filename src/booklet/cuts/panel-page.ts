import type { Stock, Units } from '../../design/design.ts'
import { draftStyle } from '../../drafting/line-types.ts'
import { type LaidTable, layTable, tableFits, tableHeight, tableMarks } from '../../drafting/table.ts'
import { titleBlock, titleBlockHeight } from '../../drafting/title-block.ts'
import { type Drawing, group, text } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { layoutMap, layoutSize } from '../../page/sheet/sheet.ts'
import type { Panel, SheetPanels } from '../../stock/panel/panels.ts'
import { lengthsNote } from '../lengths-note.ts'
import { cutRows } from './cut-rows.ts'
import { legible } from './legible.ts'
import { panelPicture, panelScale } from './panel-picture.ts'
import { beginNote, drawnNotes, hasCurved, panelName, panelNoteOnPaper } from './panel-words.ts'
import { lieWords, pieceCells } from './piece-words.ts'

export interface PanelPagesFacts {
  readonly title: string
  readonly units: Units
  /** first part of the set code: the same on every page plotted of this design */
  readonly code: string
  /** several ramps: pieces are told with theirs */
  readonly several: boolean
  readonly sheets: readonly SheetPanels[]
  readonly stock: Stock
}

/** A page that is drawn once its number is known: `3 of 8`. */
export interface UnnumberedPage {
  readonly draw: (number: string) => Drawing
  readonly label: string
}

const gap = 5
/** The drawing leaves them so much; what is more goes on. mm */
const leastTables = 48
/** At a smaller scale names and figures do not find room: rows of tables go on before that. */
const leastRatio = 1 / 25
const caution =
  'Eyes, ears and lungs covered; both sides of each cut held up; blade and cord watched; unplug before a change.'

/** A page for each panel, read with its right edge down: the panel to scale, its pieces, the order of cuts. Long tables go on. */
export const panelPages = (window: Box, facts: PanelPagesFacts): readonly UnnumberedPage[] => {
  const page = layoutSize(window, 'landscape')
  const panels = facts.sheets.flatMap((own) => own.panels)
  return panels.flatMap((panel) =>
    contents(panel, panels.length, page, facts).map((marks, i) => ({
      draw: (number) => [group(layoutMap(window, 'landscape'), marks(number))],
      label: i === 0 ? `panel ${panel.number}` : `panel ${panel.number}, page ${i + 1}`,
    })),
  )
}

/** A page as it is read, mm. */
interface Room {
  readonly width: number
  readonly height: number
}

const contents = (
  panel: Panel,
  count: number,
  page: Room,
  facts: PanelPagesFacts,
): readonly ((number: string) => Drawing)[] => {
  const { width, height } = page
  const { units } = facts
  // edge by edge the cuts of curved pieces are many: they stand beside the drawing
  const beside = panel.pieces.some(({ second }) => second !== null)
  const left = beside ? width * pictureShare - gap : width
  const top = topOf(panel, count, page, facts)
  const tables = tablesOf(panel, width, facts, beside)
  const foot = footOf(panel, count, width, facts)
  const tall = tableHeight(tables[0])
  const least = beside ? tall : Math.min(Math.max(tall, tableHeight(tables[1])), leastTables)
  const room = top.bottom - foot.top - (beside ? 1.7 : 2) * gap
  const scales = [least, Math.min(least, leastTables), 0].map((under) =>
    panelScale(panel, { width: left, height: room - under }, units),
  )
  const scale =
    scales.find(({ ratio }) => ratio >= leastRatio) ?? scales.reduce((a, b) => (b.ratio > a.ratio ? b : a))
  const picture = legible(panelPicture(panel, scale, units, cutRows(panel, units)), 'stays')
  const box = drawingBounds(picture)!
  const under = top.bottom - 3 - (box.y1 - box.y0) - gap
  const at = { x: (left - (box.x1 - box.x0)) / 2 - box.x0, y: top.bottom - 3 - box.y1 }
  const later = top.headBottom - gap
  const firsts = [under, beside ? top.bottom - gap : under] as const
  const split = paged(
    tables,
    firsts.map((from) => from - foot.top),
    later - foot.top,
  )
  return split.map((parts, i) => (number) => [
    ...(i === 0
      ? [...top.marks, group(affineTranslate(at.x, at.y), picture)]
      : [text('note', { x: 0, y: height - 5 }, 5, `Panel ${panel.number}, continued`, { face: 'bold' })]),
    ...sharesOf(tables, parts, width, i === 0 ? firsts : [later, later]),
    ...foot.marks(scale.words, number),
  ])
}
/** Of the page's width for a drawing with its cuts beside it. */
const pictureShare = 0.6

/** The panel's name, and how its drawing is read. */
const topOf = (
  panel: Panel,
  count: number,
  { width, height }: Room,
  { sheets, stock, units }: PanelPagesFacts,
) => {
  const curved = hasCurved(sheets.flatMap(({ panels }) => panels))
  const head = paragraph({ x: 0, y: height }, `Panel ${panelName(panel, count, units)}`, {
    layer: 'note',
    width,
    size: 5,
    face: 'bold',
  })
  const sub =
    panel.number === 1
      ? rulesMarks([...drawnNotes(stock, units, curved), lengthsNote(units)], head.bottom, width)
      : paragraph({ x: 0, y: head.bottom }, `How it is read: page 1. ${lengthsNote(units)}`, {
          layer: 'note',
          width,
          size: 2.5,
        })
  const begin = paragraph({ x: 0, y: sub.bottom - 1 }, beginNote(panel, units), {
    layer: 'note',
    width,
    size: 3,
    face: 'bold',
  })
  return {
    headBottom: head.bottom,
    bottom: begin.bottom,
    marks: [...head.marks, ...sub.marks, ...begin.marks],
  }
}

/** How panels are read, each rule a paragraph, in two columns. */
const rulesMarks = (rules: readonly string[], top: number, width: number) => {
  const wide = (width - 2 * gap) / 2
  const column = (x: number, own: readonly string[]) =>
    own.reduce<{ readonly marks: Drawing; readonly bottom: number }>(
      ({ marks, bottom }, rule) => {
        const said = paragraph({ x: x + 3, y: bottom }, rule, { layer: 'note', width: wide - 3, size: 2.5 })
        const sign = text('note', { x, y: bottom - 2.5 }, 2.5, '–')
        return { marks: [...marks, sign, ...said.marks], bottom: said.bottom }
      },
      { marks: [], bottom: top },
    )
  const tall = (own: readonly string[]): number => top - column(0, own).bottom
  // as even as can be
  const taller = rules.map((_, i) => Math.max(tall(rules.slice(0, i + 1)), tall(rules.slice(i + 1))))
  const first = taller.indexOf(Math.min(...taller)) + 1
  const [left, right] = [column(0, rules.slice(0, first)), column(wide + 2 * gap, rules.slice(first))]
  return { marks: [...left.marks, ...right.marks], bottom: Math.min(left.bottom, right.bottom) }
}

/** Its pieces at the left, the order of its cuts at the right. */
const tablesOf = (
  panel: Panel,
  width: number,
  { units, several }: PanelPagesFacts,
  beside: boolean,
): readonly [LaidTable, LaidTable] => {
  const sawn = layTable(
    {
      columns: [
        { head: '', kind: 'box' },
        { head: 'cut', kind: 'right', face: 'bold' },
        { head: 'in this order', kind: 'words' },
      ],
      rows: cutRows(panel, units).map(({ number, words }) => ['', number, words]),
    },
    beside ? width * (1 - pictureShare) : (width - gap) * 0.45,
    draftStyle,
  )
  const own = layTable(
    {
      columns: [
        { head: 'piece', kind: 'words', face: 'bold' },
        { head: 'what', kind: 'words' },
        { head: 'as it lies', kind: 'words' },
        { head: 'its corner from\nthe left end', kind: 'figure' },
        { head: 'its corner from\nthe lower edge', kind: 'figure' },
      ],
      rows: panel.pieces.map((piece) => {
        const [mark, what, extent, left, below] = pieceCells(piece, several, units)
        const lies = lieWords(piece, units)
        return [mark, what, lies === '' ? extent : `${extent}, ${lies}`, left, below]
      }),
    },
    width - sawn.width - 2 * gap,
    draftStyle,
  )
  return [own, sawn]
}

/** Rows of both tables, each from so high down. */
const sharesOf = (
  tables: readonly [LaidTable, LaidTable],
  shares: readonly Share[],
  width: number,
  ys: readonly [number, number],
): Drawing =>
  shares.flatMap(({ from, count }, i) =>
    count === 0
      ? []
      : tableMarks(tables[i]!, { x: i === 0 ? 0 : width - tables[1].width, y: ys[i]! }, from, count),
  )

/** What every page of a panel ends with: cautions, the title block. */
const footOf = (panel: Panel, count: number, width: number, { title, code }: PanelPagesFacts) => {
  const foot = titleBlockHeight(draftStyle.size)
  const note = panelNoteOnPaper(panel)
  const words = paragraph({ x: 0, y: 0 }, [...(note ? [note] : []), caution].join(' '), {
    layer: 'note',
    width,
    size: 2.5,
  })
  const top = foot + 2 - words.bottom
  return {
    top,
    marks: (scale: string, page: string): Drawing => [
      ...titleBlock(
        { x0: 0, y0: 0, x1: width, y1: foot },
        [
          { name: 'design', value: title },
          { name: 'panel', value: `${panel.number} of ${count}` },
          { name: 'scale', value: scale },
          { name: 'set code begins', value: code },
          { name: 'page', value: page },
        ],
        draftStyle,
      ),
      group(affineTranslate(0, top), words.marks),
    ],
  }
}

interface Share {
  readonly from: number
  readonly count: number
}

/** Rows of tables side by side on a first page with so much room for each, the rest on further ones. mm */
const paged = (
  tables: readonly LaidTable[],
  first: readonly number[],
  later: number,
): readonly (readonly Share[])[] => {
  const pages: (readonly Share[])[] = []
  let done = tables.map(() => 0)
  do {
    const share = tables.map((one, i) => ({
      from: done[i]!,
      count: tableFits(one, done[i]!, pages.length === 0 ? first[i]! : later),
    }))
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
