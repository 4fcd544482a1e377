import { type Drawing, group, stroke, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Box } from '../../geometry/bounds.ts'
import { type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { figureParts } from '../../length/figure-parts.ts'
import { showLength, type Units } from '../../length.ts'
import { cautionsOf } from '../../page/pages/cautions.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { Offsets } from '../../ramp/offsets.ts'
import { numberedHeight, offsetsPicture } from './offsets-picture.ts'
import { type OffsetRow, offsetRows } from './offsets-rows.ts'
import { checkWords, signWords, swingWords, unitWord } from './offsets-words.ts'
import { rowNote } from './row-note.ts'

export interface OffsetsFacts {
  readonly title: string
  readonly units: Units
  readonly offsets: Offsets
  /** the side's cut line */
  readonly outline: Path
}

/** Pages are laid out this wide and scaled to the window, at most twice; mm. */
const nominal = 186
const mostScale = 2

/** The table's columns, and what stands to the right of it, mm. */
const tableWidth = 106
const gap = 6
/** Heights of the table's figures, the largest that fits; smaller ones go on another page. */
const sizes = [5, 4.5, 4, 3.5, 3, 2.7] as const
const leading = 1.65
/** Heights where the table has a page of its own. */
const alone = [8, 7.5, 7, 6.5, 6, 5.5, 5, 4.5, 4, 3.5] as const
/** Smaller figures only for the sake of one page. */
const leastUsual = 3.5
const headSize = 3
/** Of the drawing with its figures. */
const leastPicture = 50

/** The offsets of one side: first a page with the drawing, the table and how to use it; the rest of a long table follows. */
export const offsetsPages = (window: Box, facts: OffsetsFacts): readonly Drawing[] => {
  const scale = Math.min(mostScale, (window.x1 - window.x0) / nominal)
  const height = (window.y1 - window.y0) / scale
  const pages = content(facts, height)
  return pages.map((marks) => [group([scale, 0, 0, scale, window.x0, window.y1 - height * scale], marks)])
}

const content = (facts: OffsetsFacts, height: number): readonly Drawing[] => {
  const { units, offsets, outline, title } = facts
  const rows = offsetRows(offsets, units)
  const note = { layer: 'note', width: nominal, size: 3, even: true } as const
  const head = paragraph({ x: 0, y: height }, `${title}: the curve of ${offsets.ramp} by offsets`, {
    ...note,
    size: letters.word,
    face: 'bold',
  })
  const sub = paragraph(
    { x: 0, y: head.bottom },
    `To draw a side without a printer. Lengths in ${unitWord(units)}, back from the panel's front edge and up from its bottom edge. ${signWords(rows)}`.trimEnd(),
    note,
  )
  const warned = framed(0, note.width, cautionsOf(offsets.notch.length > 0))
  const bottom = warned.height + 3
  const room = sub.bottom - bottom - 4
  const wordsAt = (x: number, y: number, more: boolean) => sideWords({ x, y }, facts, more)
  const wordsHeight = -wordsAt(tableWidth + gap, 0, true).bottom
  const pictureOf = (high: number) =>
    offsetsPicture({ left: 0, top: sub.bottom, width: nominal, height: high }, offsets, outline, rows)
  // the words beside the table must fit; the drawing takes what is left, within reason, and as much as its marks need
  const usual = Math.max(leastPicture, Math.min(height * 0.3, room - wordsHeight))
  const needed = Math.min(numberedHeight(offsets, outline), height * 0.45)
  const pictureHeight = (s: number): number => Math.max(s < leastUsual ? leastPicture : usual, needed)
  const size = sizes.find(
    (s) => Math.max(tableHeight(rows.length, s), wordsHeight) <= room - pictureHeight(s),
  )
  const common = [...head.marks, ...sub.marks, ...warned.marks]
  if (size !== undefined) {
    const picture = pictureOf(pictureHeight(size))
    const top = picture.bottom - 2
    return [
      [
        ...common,
        ...picture.marks,
        ...table({ x: 0, y: top }, rows, size),
        ...wordsAt(tableWidth + gap, top, false).marks,
      ],
    ]
  }
  // the table on pages of its own; the drawing as large as the words under it leave room for
  const under = -wordsAt(0, 0, true).bottom
  const picture = pictureOf(Math.max(leastPicture, room - under))
  const high = height - 14
  const own = alone.find((s) => tableHeight(rows.length, s) <= high) ?? leastUsual
  return [
    [...common, ...picture.marks, ...wordsAt(0, picture.bottom - 2, true).marks],
    ...pagesOf(rows, own, high).map((some, i) => [
      ...paragraph({ x: 0, y: height }, `${title}: the curve of ${offsets.ramp} by offsets, page ${i + 2}`, {
        ...note,
        size: letters.word,
        face: 'bold',
      }).marks,
      ...table({ x: 0, y: height - 12 }, some, own, nominal),
    ]),
  ]
}

const tableHeight = (count: number, size: number): number => (count + 1) * size * leading
const fits = (height: number, size: number): number => Math.max(1, Math.floor(height / (size * leading)) - 1)

const pagesOf = (rows: readonly OffsetRow[], size: number, height: number): readonly OffsetRow[][] => {
  // as many on each
  const count = Math.ceil(rows.length / Math.ceil(rows.length / fits(height, size)))
  return Array.from({ length: Math.ceil(rows.length / count) }, (_, i) =>
    rows.slice(i * count, (i + 1) * count),
  )
}

/** Mark, back, up, and a word where one is needed; a hair line under every row, so that the eye keeps to it. */
const table = (
  topLeft: { x: number; y: number },
  rows: readonly OffsetRow[],
  size: number,
  width = tableWidth,
): Drawing => {
  const pitch = size * leading
  const { back, up, end } = columnsOf(rows, size, 0.15 * (width - tableWidth))
  const seams = { back: topLeft.x + back, up: topLeft.x + up }
  const line = (i: number): number => topLeft.y - (i + 1) * pitch
  const figure = (x: number, y: number, words: string, bold: boolean): Drawing => {
    const face = bold ? 'bold' : 'regular'
    const [whole, rest] = figureParts(words)
    return [
      text('note', { x, y }, size, whole, { face, align: 'right' }),
      ...(rest === '' ? [] : [text('note', { x: x + seamGap(rest, size), y }, size, rest, { face })]),
    ]
  }
  const noteSize = width > tableWidth ? headSize : letters.small
  const heads: Drawing = [
    text('note', { x: topLeft.x, y: line(0) }, headSize, 'mark', { face: 'bold' }),
    text('note', { x: seams.back, y: line(0) }, headSize, 'back', { face: 'bold', align: 'right' }),
    text('note', { x: seams.up, y: line(0) }, headSize, 'up', { face: 'bold', align: 'right' }),
  ]
  return [
    ...heads,
    ...rows.flatMap((row, i) => {
      const y = line(i + 1)
      return [
        stroke(
          'note',
          pathOf({ x: topLeft.x, y: y + size * 1.32 }, { x: topLeft.x + width, y: y + size * 1.32 }),
          pens.ruler,
        ),
        text('note', { x: topLeft.x, y }, size, row.mark, { face: 'bold' }),
        ...figure(seams.back, y, row.back, row.measured !== 'up'),
        ...figure(seams.up, y, row.up, row.measured !== 'back'),
        ...rowNote({ x: topLeft.x + width, y }, row.words, width - end - 2, noteSize, size),
      ]
    }),
  ]
}

/** A fraction stands off its inches, a decimal does not. */
const seamGap = (rest: string, size: number): number =>
  /^\d/.test(rest) ? textWidth(' ', size, 'regular') : 0

/** Seams of the two columns of figures and their end, from what stands in them, with so much more between them. */
const columnsOf = (
  rows: readonly OffsetRow[],
  size: number,
  more = 0,
): { readonly back: number; readonly up: number; readonly end: number } => {
  const wide = (words: readonly string[]): number =>
    Math.max(...words.map((word) => textWidth(word, size, 'bold')))
  const before = (of: 'back' | 'up'): number => wide(rows.map((row) => figureParts(row[of])[0]))
  const after = (of: 'back' | 'up'): number =>
    Math.max(
      ...rows.map((row) => {
        const rest = figureParts(row[of])[1]
        return seamGap(rest, size) + textWidth(rest, size, 'bold')
      }),
    )
  // the words over the columns need their room too
  const head = (word: string): number => textWidth(word, headSize, 'bold')
  const back = Math.max(
    wide(rows.map((row) => row.mark)) + 4 + more + before('back'),
    head('mark') + 4 + more + head('back'),
  )
  const up = back + more + Math.max(after('back') + 5 + before('up'), 5 + head('up'))
  return { back, up, end: up + after('up') }
}

/** What to do, in at most six steps. */
const useSteps = (offsets: Offsets, units: Units): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units, { unit: true, decimals: 1 })
  return [
    'The bottom edge comes first: a straight factory edge, or sawn straight. Strike the front edge square to it.',
    `Every ${show(offsets.every)} back strike a line up with a square; mark its height (table) on it.`,
    ...(offsets.stations.some((station) => station.by === 'up')
      ? [
          `Steep part: every ${show(offsets.everyUp)} up strike a level line; mark its distance back (table) on it.`,
        ]
      : []),
    'A brad at each mark. Bend a thin batten along them, past TOE and LIP; a mark that makes a hump is wrong.',
    'Check TOE to LIP and the middle rise, then draw the line.',
    ...(offsets.notch.length > 0 ? ['Set out the notch last, with the real pipe in hand.'] : []),
  ]
}

/** How to use it, what to check, and the swing arm. */
const sideWords = (
  topLeft: { x: number; y: number },
  { offsets, units }: OffsetsFacts,
  more: boolean,
): { readonly marks: Drawing; readonly bottom: number } => {
  const width = nominal - topLeft.x
  const style = { layer: 'note', width, size: 2.7 } as const
  const marks: Drawing[] = []
  let y = topLeft.y - 1.5
  const write = (words: string, indent = 0, face: 'regular' | 'bold' = 'regular'): void => {
    // a fraction stays with its inches
    const held = words.replace(/(\d) (\d+\/\d)/g, '$1\u00a0$2')
    const lines = paragraph({ x: topLeft.x + indent, y }, held, { ...style, width: width - indent, face })
    marks.push(lines.marks)
    y = lines.bottom - 0.2
  }
  useSteps(offsets, units).forEach((step, i) => {
    marks.push([
      text('note', { x: topLeft.x + 3, y: y - style.size }, style.size, `${i + 1}`, {
        face: 'bold',
        align: 'right',
      }),
    ])
    write(step, 5)
  })
  y -= 1.5
  write('Check', 0, 'bold')
  for (const line of checkWords(offsets, units)) write(line)
  const swing = swingWords(offsets, units)
  if (swing.length > 0) {
    y -= 1.5
    write('Or with a swing arm', 0, 'bold')
    for (const line of swing) write(line)
  }
  if (more) write('The table is on the next page.', 0, 'bold')
  return { marks: marks.flat(), bottom: y }
}

const framed = (
  bottom: number,
  width: number,
  lines: readonly string[],
): { readonly marks: Drawing; readonly height: number } => {
  const style = { layer: 'note', width: width - 6, size: letters.small, even: true } as const
  const layOut = (from: number): { readonly marks: Drawing; readonly bottom: number } => {
    let y = from - 2.5
    const marks = lines.map((line) => {
      const words = paragraph({ x: 3, y }, line, style)
      y = words.bottom + 0.4
      return words.marks
    })
    return { marks: marks.flat(), bottom: y - 1 }
  }
  const height = -layOut(0).bottom
  return {
    height,
    marks: [
      ...layOut(bottom + height).marks,
      stroke('note', rectangle(0, bottom, width, bottom + height), pens.mark),
    ],
  }
}
