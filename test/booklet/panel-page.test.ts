import { expect, test } from 'vitest'
import { cutRows } from '../../src/booklet/cuts/cut-rows.ts'
import { cutsPages } from '../../src/booklet/cuts/cuts-pages.ts'
import { cutsText } from '../../src/booklet/cuts/cuts-text.ts'
import { legible } from '../../src/booklet/cuts/legible.ts'
import { panelPicture, panelScale } from '../../src/booklet/cuts/panel-picture.ts'
import { panelName } from '../../src/booklet/cuts/panel-words.ts'
import { markWords, sawStepWords } from '../../src/booklet/cuts/piece-words.ts'
import { readDesign } from '../../src/design/read.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { showLength } from '../../src/length.ts'
import { sheetWindow } from '../../src/page/sheet/sheet.ts'
import { designOf } from '../support/design-of.ts'
import { templates, templateText } from '../support/templates.ts'
import { bookletSaid, cutsSaid, flatAlone } from './said.ts'

const wordsIn = (drawing: Drawing): readonly string[] =>
  drawing.flatMap((mark) =>
    mark.kind === 'group' ? wordsIn(mark.marks) : mark.kind === 'text' ? [mark.text] : [],
  )

// a fraction stands apart from its inches in a table
const joined = (words: readonly string[]): string => words.join(' ').replace(/\s+/g, ' ')

test.each(templates.flatMap((name) => (['letter', 'a4'] as const).map((paper) => [name, paper] as const)))(
  '%s on %s: the page of a panel alone says where each piece lies, what is cut first and which face is up',
  (name, paper) => {
    const reading = readDesign(templateText(name))
    if ('problems' in reading) throw new Error('no design')
    const { design } = reading
    const job = cutsJob(design)
    if (isRefusal(job)) throw new Error('refused')
    const { title, units } = design
    const show = (mm: number): string => showLength(mm, units)
    const several = design.ramps.length > 1
    const pages = cutsPages(sheetWindow(usualLaying(paper).sheet), {
      title,
      units,
      stock: design.stock,
      several,
      sheets: job.sheets,
      boards: job.boards,
      code: 'ABCD',
    })
    const panels = job.sheets.flatMap(({ panels: own }) => own)
    // what is sawn is told apart by its mark alone
    const marked = [/Write its mark on each piece before it is sawn free\./, /write its mark on each;/]
    const read = joined(pages.flatMap(({ drawing }) => wordsIn(drawing)))
    const text = cutsText(design, job.sheets, job.boards).replace(/\s+/g, ' ')
    const narrow = cutsText(design, job.sheets, job.boards, 60)
    expect(narrow.replace(/\s+/g, ' ')).toBe(text)
    for (const line of narrow.split('\n').filter((one) => /^(?:board| {2}saw| {10})/.test(one)))
      expect(line.length).toBeLessThanOrEqual(60)
    for (const note of marked) for (const said of [read, text]) expect(said).toMatch(note)
    // long tables go on; the drawing with its figures is not made smaller for them
    const scales = [...read.matchAll(/\b1 : (\d+)/g)].map(([, n]) => Number(n))
    expect(scales.length > 0).toBe(units === 'mm')
    expect(Math.max(0, ...scales)).toBeLessThanOrEqual(25)
    expect(read).not.toMatch(/1\/(4|8|16) in = 1 ft/)
    let [pieces, faced, curved] = [0, 0, 0]
    for (const panel of panels) {
      const own = pages.filter(
        ({ label }) => label === `panel ${panel.number}` || label.startsWith(`panel ${panel.number},`),
      )
      const said = own.flatMap(({ drawing }) => wordsIn(drawing))
      const whole = joined(said)
      for (const piece of panel.pieces) {
        pieces++
        const mark = markWords(piece)
        // in the drawing: each figure with the mark of the piece whose ring lies there; none is said of zero
        for (const mm of [piece.x, piece.y])
          if (mm > 0.01)
            expect(
              said.some((words) => words.startsWith(`${show(mm)}  `) && words.includes(mark)),
              `${mark} ${mm}`,
            ).toBe(true)
        expect(said.filter((words) => words === mark).length).toBeGreaterThan(1)
        // in words
        expect(whole).toContain(`${show(piece.x)} ${show(piece.y)}`)
        if (piece.part.faced) {
          faced++
          const way = piece.over ? 'DOWN' : 'UP'
          // on the drawing where it has room, in its row of the table always
          const row = said.slice(said.lastIndexOf(mark)).slice(0, 9).join(' ')
          expect(row).toMatch(new RegExp(`OUTSIDE FACE ${way}`))
        }
        if (piece.second) curved++
      }
      expect(said.filter((words) => words === 'LIP').length).toBe(
        panel.pieces.filter(({ part, second }) => second && (part.piece?.lip ?? true)).length,
      )
      const [first] = cutRows(panel, units)
      if (first) {
        expect(whole).toContain(`First cut, ${first.number}: ${first.words}.`)
        expect(said.filter((words) => words === first.number).length).toBeGreaterThan(1)
      }
      // the long side says which way the grain runs, where there is one
      const square = { ...panel, size: [1525, 1525] as const }
      expect(panelName(panel, panels.length, units)).not.toContain('grain')
      expect(panelName(square, panels.length, units).includes('face grain left to right')).toBe(
        panel.sheet.material === 'plywood',
      )
      // a saw tears the upper face: the better one lies down where no page is laid on
      const better = panel.pieces.some(({ second }) => second) ? 'better face UP' : 'better face DOWN'
      const face = { plywood: better, hardboard: 'smooth face UP', steel: null, other: better }[
        panel.sheet.material
      ]
      if (face) expect(said).toContain(face)
      else expect(whole).not.toContain('face UP')
    }
    expect(pieces).toBeGreaterThan(4)
    expect(faced).toBeLessThanOrEqual(curved)
    expect(curved).toBeGreaterThan(1)
  },
)

test('narrow pieces side by side are drawn large enough for their marks, in a drawing that is higher by two centimetres at most', () => {
  const job = cutsJob(designOf(flatAlone(3000, '    fasten: between\n')))
  if (isRefusal(job)) throw new Error('refused')
  const [panel] = job.sheets.flatMap(({ panels: own }) => own)
  const marks = panel!.pieces.map(markWords)
  expect(marks.length).toBe(9)
  const room = { width: 190, height: 58 }
  const scale = panelScale(panel!, room, 'mm')
  const picture = legible(panelPicture(panel!, scale, 'mm', cutRows(panel!, 'mm')), 'goes')
  const box = drawingBounds(picture)!
  expect(box.y1 - box.y0).toBeLessThanOrEqual(room.height + 20)
  const said = wordsIn(picture)
  expect(marks.filter((mark) => said.includes(mark)).length).toBeGreaterThanOrEqual(8)
})

test('whether the first cut trims the panel, and by how much, is said where sawing starts', () => {
  const text = templateText('pair-mm')
  const none = /No edge is trimmed before the first cut: a cut that trims says so\./
  // the usual trim is spared where rectangles keep the panel's corner
  for (const said of [cutsSaid(text), bookletSaid(text, ['cutting'])]) {
    expect(said).toMatch(none)
    expect(said).not.toMatch(/, trims/)
  }
  // skin, deck and run-out begin 12 in from both edges, so one cut along takes 12 off, and one across
  const said = cutsSaid(`${text}stock: { trim: 12 }\n`)
  expect(said).toMatch(none)
  expect(said.match(/ along at 12, blade below, trims 12 off/g)).toHaveLength(5)
  expect(said.match(/ across at 12, 12 to \d+, the part with \w+, blade left, trims 12 off/g)).toHaveLength(5)
  expect(said.match(/, trims/g)).toHaveLength(10)
})

test('a cut that leaves less than a blade takes beside an edge of the panel says so', () => {
  const job = cutsJob(designOf(templateText('quarter-mm')))
  if (isRefusal(job)) throw new Error('refused')
  const panel = job.sheets
    .flatMap(({ panels: own }) => own)
    .find(({ pieces }) => pieces.every(({ second }) => !second))!
  const [width, length] = panel.size
  const mark = panel.pieces[0]!.part.mark
  const step = { from: 0, marks: [mark] } as const
  const said = (strip: number): readonly string[] =>
    (
      [
        { ...step, kind: 'rip', at: width - strip, to: length, blade: 'past' },
        { ...step, kind: 'cross', at: length - strip, to: width, blade: 'past' },
      ] as const
    ).map((one) => sawStepWords(one, panel, 'mm'))
  for (const words of said(2))
    expect(words).toMatch(/, 2 off the panel's edge: where the saw will not hold it, plane it off$/)
  for (const words of said(5)) expect(words).not.toMatch(/plane/)
  const steel = { ...panel, sheet: { thickness: 1.5, material: 'steel' } } as const
  const rip = { ...step, kind: 'rip', at: width - 2, to: length, blade: 'past' } as const
  expect(sawStepWords(rip, steel, 'mm')).toMatch(/, file it off$/)
})
