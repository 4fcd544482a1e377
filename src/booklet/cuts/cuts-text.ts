import type { Design, Stock, Units } from '../../design/design.ts'
import { textColumns, wrapLine } from '../../length/words.ts'
import { showLength } from '../../length.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import type { Panel, SheetPanels } from '../../stock/panel/panels.ts'
import { sheetLine, sizeWords } from '../../stock/panel/sheet-words.ts'
import { cutRows } from './cut-rows.ts'
import { hasCurved, ownEdges, panelName, panelNote, stepsNote, upFace } from './panel-words.ts'
import { lieWords, pieceCells } from './piece-words.ts'
import { timberText } from './timber-text.ts'
import type { NumberedBoard } from './timber-words.ts'

/** The panels and the timber of a design under its title, in lines of so many letters; a row of a table stays one line. */
export const cutsText = (
  { title, stock, units, ramps }: Design,
  sheets: readonly SheetPanels[],
  boards: readonly NumberedBoard[],
  columns = textColumns,
): string =>
  `${title}: what is sawn from which panel and timber (lengths in ${units === 'mm' ? 'mm' : 'inches; + is 1/32 more, – is 1/32 less'})\n\n` +
  panelsText(sheets, stock, ramps.length > 1, units, columns) +
  timberText(boards, ramps.length > 1, units, columns)

/** What is sawn from which panel, where each piece lies, and in which order, as plain text. */
const panelsText = (
  sheets: readonly SheetPanels[],
  stock: Stock,
  several: boolean,
  units: Units,
  columns: number,
): string => {
  const panels = sheets.flatMap((own) => own.panels)
  const curved = hasCurved(panels)
  const unsaid = sheets.some(({ usual }) => usual)
  return [
    ...sheets.map((own) => sheetLine(own, stock.trim, units)),
    ...(unsaid ? wrapLine(usualNote(sheets, units), columns, 2) : []),
    '',
    ...wrapLine(
      'Each panel lies with its long side from left to right and the face up that is said. Measure from its left end and its ' +
        `lower edge: ${curved ? 'to the toe corner of a side, where its bottom and front edges meet, or the same corner at its joint; to the lower left corner of what is square' : 'to the lower left corner of each piece'}. ${ownEdges} ${stepsNote(stock, units, curved)}`,
      columns,
      0,
    ),
    ...panels.flatMap((panel) => ['', ...panelText(panel, panels.length, several, units, columns)]),
    '',
  ].join('\n')
}

/** Where a size comes from that the design does not say, and how to say it. */
const usualNote = (sheets: readonly SheetPanels[], units: Units): string => {
  const { sheet, sizes } = sheets.find(({ usual }) => usual)!
  const typed = sizeWords(sizes[0]!, units).replace('×', 'x')
  return `Sizes are those of \`stock: panel\`, steel's the usual one; say others so: stock: { panels: [{ sheet: ${sheetWords(sheet, units)}, size: ${typed} }] }`
}

const panelText = (
  panel: Panel,
  count: number,
  several: boolean,
  units: Units,
  columns: number,
): readonly string[] => {
  const { pieces, rest } = panel
  const show = (mm: number): string => showLength(mm, units)
  const rows = pieces.map((piece) => pieceCells(piece, several, units))
  const heads = ['piece', 'what', 'as it lies', 'from left', 'from below']
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i]!.length)))
  const line = (cells: readonly string[]): string =>
    `  ${cells.map((cell, i) => (i === 3 || i === 4 ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!))).join('  ')}`.trimEnd()
  const note = panelNote(panel)
  const up = upFace(panel)
  return [
    `panel ${panelName(panel, count, units)}${up === null ? '' : `, ${up}`}`,
    line(heads),
    ...rows.flatMap((cells, i) => {
      const lies = lieWords(pieces[i]!, units)
      return [
        line(cells),
        ...(lies === '' ? [] : wrapLine(`${' '.repeat(widths[0]! + 4)}${lies}`, columns, 10)),
      ]
    }),
    ...cutRows(panel, units).flatMap(({ number, words }, i) =>
      wrapLine(`  ${i === 0 ? 'saw ' : '    '}${number.padStart(2)}  ${words}`, columns, 10),
    ),
    ...(rest ? [`  rest  ${show(rest.x1 - rest.x0)} × ${show(rest.y1 - rest.y0)}`] : []),
    ...(note ? wrapLine(`  ${note}`, columns, 4) : []),
  ]
}
