import { curvedOf } from '../../../../design/kind-traits.ts'
import { type Drawing, group, type Mark, text } from '../../../../drawing/drawing.ts'
import { drawingBounds } from '../../../../drawing/drawing-bounds.ts'
import { affineTranslate } from '../../../../geometry/affine.ts'
import { capital } from '../../../../length/capital.ts'
import { numberList, wordList } from '../../../../length/word-list.ts'
import type { Panel } from '../../../../stock/panel/panels.ts'
import { isSteel } from '../../../../stock/steel-uses.ts'
import { type CutRow, cutRows } from '../../../cuts/cut-rows.ts'
import { legible } from '../../../cuts/legible.ts'
import { panelPicture, panelScale } from '../../../cuts/panel-picture.ts'
import {
  cutsNotes,
  hasCurved,
  panelName,
  panelNoteOnPaper,
  panelRule,
  tornNote,
} from '../../../cuts/panel-words.ts'
import { lieWords, pieceCells } from '../../../cuts/piece-words.ts'
import {
  type Block,
  beside,
  check,
  type FixedBlock,
  gap,
  named,
  part,
  sizes,
  stack,
  type TableBlock,
  table,
  together,
  words,
} from '../../block.ts'
import type { Book } from '../../book.ts'
import { onPage } from '../../page-words.ts'

/** Their head, before which all pieces may be listed. */
export const panelsName = 'panels'

/** Each panel with what is sawn from it, and in which order. */
export const panelBlocks = (book: Book): readonly Block[] => {
  const { width, sheets } = book
  const panels = sheets.flatMap((own) => own.panels)
  if (panels.length === 0) return []
  return [
    named(panelsName, part('Panels', width)),
    words(panelRule(hasCurved(panels)), width),
    ...grainWords(book).map((said) => check(said, width)),
    // a drawing and the order of its cuts are not parted where a page holds both
    ...panels.flatMap((panel) => together(panelOf(book, panel, panels.length), book.tall)),
  ]
}

/** How panels are marked and sawn, before the first step that does it. */
export const sawRules = ({ width, sheets, patterns, design, units }: Book): readonly Block[] => {
  const panels = sheets.flatMap((own) => own.panels)
  if (panels.length === 0) return []
  // the steps of a curved side say the last themselves
  return [
    ...cutsNotes(design.stock, units, hasCurved(panels)),
    ...(patterns.length > 0 ? [] : [tornNote]),
  ].map((note) => words(note, width))
}

/** Panels that sheets of skin and deck come from. */
const sheetPanels = ({ sheets }: Book): readonly Panel[] =>
  sheets
    .flatMap(({ panels }) => panels)
    .filter(({ pieces }) => pieces.some(({ part: { part: of } }) => of === 'skin' || of === 'deck-board'))

/** The same of steel, which no blade for wood saws. */
export const steelPanels = (book: Book): readonly Panel[] =>
  sheetPanels(book).filter(({ sheet }) => isSteel(sheet))

/** What is sawn by tape and square alone, panel by panel. */
export const sheetSteps = (book: Book): readonly string[] => {
  const own = sheetPanels(book).filter(({ sheet }) => !isSteel(sheet))
  const [first] = own
  const parts = own.flatMap(({ pieces }) => pieces.map(({ part: { part: of } }) => of))
  const uses = [
    ...(parts.includes('skin') ? ['skin'] : []),
    ...(parts.includes('deck-board') ? ['deck'] : []),
  ]
  return first
    ? [
        `Saw the sheets of ${wordList(uses)} from ${numberList(
          'panel',
          own.map(({ number }) => number),
        )}, each in the order of its panel${onPage(`panel ${first.number}`)}. Write each mark on the face that comes below, with an arrow to ${book.patterns.length > 0 ? 'the edge at the toe' : 'its first end'}.`,
      ]
    : []
}

/** How the face grain of the skin must lie, before it is sawn: pieces that turn it are lost. */
const grainWords = ({ sheets, solved: { checks, ramps }, several }: Book): readonly string[] => {
  const grained = sheets.flatMap(({ parts }) =>
    parts.filter(({ part: of, grain }) => of === 'skin' && grain !== null),
  )
  // ramps of like skin are told once
  const bends = new Map<string, readonly string[]>()
  for (const { id, ramp, message } of checks)
    if (id === 'skin-bend') {
      const said = message.replaceAll('`', '')
      bends.set(said, [...(bends.get(said) ?? []), ramp])
    }
  const curved = curvedOf(ramps).length
  return [
    ...(grained.length > 0
      ? [
          `The face grain runs along the panel, as drawn: ${wordList(grained.map(({ mark }) => mark))} ${grained.length > 1 ? 'are' : 'is'} not turned on it.`,
        ]
      : []),
    ...[...bends]
      .map(([said, own]) => `${several && own.length < curved ? `${wordList(own)}: ` : ''}${said}.`)
      .map(capital),
  ]
}

/** A picture this wide leaves room for its tables at its side, as a share of the page. */
const share = 0.6
const between = 4
/** Tables beside a picture may reach so far below it, mm. */
const below = 45

const panelOf = (book: Book, panel: Panel, count: number): readonly Block[] => {
  const { width, units } = book
  const { pieces } = panel
  const told = panelNoteOnPaper(panel)
  const name = `Panel ${panelName(panel, count, units)}`
  const note = told ? [words(told, width)] : []
  // what is curved is drawn as large as can be: its names need room
  const square = pieces.every(({ second }) => second === null)
  const high = square
    ? tallestSquare * Math.max(leastPanel, book.share)
    : pieces.length > 2
      ? tallestMany
      : tallest
  const cuts = cutRows(panel, units)
  const narrow = tablesOf(book, panel, cuts, width * (1 - share) - between)
  if (square && narrow.every(({ laid }) => laid.width <= width * (1 - share) - between)) {
    const small = picture(book, panel, cuts, name, { width: width * share, height: high })
    const aside = stack([gap(before + nameRoom), ...narrow])
    if (aside.height <= Math.max(small.height, high) + below)
      return [beside(small, aside, width * share + between), ...note]
  }
  const large = picture(book, panel, cuts, name, { width, height: high })
  const halves = tablesOf(book, panel, cuts, (width - between) / 2)
  const [left, right] = halves
  if (left && right && left.laid.width + right.laid.width + between <= width) {
    const both = beside(stack([left]), stack([right]), left.laid.width + between)
    if (both.height < tallest) return [large, both, ...note]
  }
  return [large, ...tablesOf(book, panel, cuts, width), ...note]
}

/** Where each piece lies, and the cuts in their order. */
const tablesOf = (
  { units, several }: Book,
  { pieces }: Panel,
  cuts: readonly CutRow[],
  width: number,
): readonly TableBlock[] => {
  return [
    table(
      {
        columns: [
          { head: 'piece', kind: 'words', face: 'bold' },
          { head: 'what', kind: 'words' },
          { head: 'from\nleft', kind: 'figure' },
          { head: 'from\nbelow', kind: 'figure' },
        ],
        rows: pieces.map((piece) => {
          const [mark, what, extent, left, below] = pieceCells(piece, several, units)
          const lies = [lieWords(piece, units)].filter((said) => said !== '')
          return [mark, [what, extent, ...lies].join('; '), left, below]
        }),
      },
      width,
    ),
    ...(cuts.length > 0
      ? [
          table(
            {
              columns: [
                { head: '', kind: 'box' },
                { head: 'cut', kind: 'right', face: 'bold' },
                { head: 'in this order', kind: 'words' },
              ],
              rows: cuts.map(({ number, words: said }) => ['', number, said]),
            },
            width,
          ),
        ]
      : []),
  ]
}

/** Over a panel's name, and for it, mm. */
const before = 4
const nameRoom = 5.5
const tallest = 78
const tallestSquare = 72
/** Of more than two sides, whose words need room. */
const tallestMany = 112
/** Panels are drawn no smaller than this share of it: their numbers need room. */
const leastPanel = 0.8

/** The panel to scale with its name over it; what is sawn stands on the page with it. */
const picture = (
  { units, drawn }: Book,
  panel: Panel,
  cuts: readonly CutRow[],
  name: string,
  room: { readonly width: number; readonly height: number },
): FixedBlock => {
  const scale = panelScale(panel, room, units)
  const marks = drawn(`${name} ${scale.words}`, () =>
    legible(oneLayer(panelPicture(panel, scale, units, cuts)), 'goes'),
  )
  const box = drawingBounds(marks)!
  const height = box.y1 - box.y0 + before + nameRoom + 4
  return {
    kind: 'fixed',
    height,
    withNext: true,
    names: [`panel ${panel.number}`],
    marks: ({ x, y }) => [
      text('note', { x, y: y - before - sizes.body }, sizes.body, `${name}; ${scale.words}`, {
        face: 'bold',
      }),
      group(
        affineTranslate(
          x + Math.max(0, (room.width - (box.x1 - box.x0)) / 2) - box.x0,
          y - before - nameRoom - box.y1,
        ),
        marks,
      ),
    ],
  }
}

/** In one layer: what lies over what is told by the order alone. */
const oneLayer = (marks: Drawing): Drawing =>
  marks.map((mark): Mark => (mark.kind === 'group' ? mark : { ...mark, layer: 'note' }))
