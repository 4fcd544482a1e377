import { expect, it } from 'vitest'
import { paperNames } from '../../../src/design/design.ts'
import { boxGrow, boxOverlaps, pathBounds } from '../../../src/geometry/bounds.ts'
import { boxCorners, pathClip } from '../../../src/geometry/clip.ts'
import { pathLength } from '../../../src/geometry/length.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { edgeCombs } from '../../../src/page/pages/comb.ts'
import { squarePage } from '../../../src/page/pages/square-page.ts'
import { squareDraft } from '../../../src/page/set/square-set.ts'
import { paperOf } from '../../../src/page/sheet/paper.ts'
import { noCorrection } from '../../../src/printer/correction.ts'
import { readingFault } from '../../../src/printer/plausible-reading.ts'
import { readReading, squareSide } from '../../../src/printer/reading.ts'
import { overlaps, wordsOf } from '../../booklet/words.ts'

it('words and blanks of the usual square lie on no diagonal', () => {
  let seen = 0
  for (const units of ['mm', 'in'] as const)
    for (const [width, height] of [
      [210, 297],
      [215.9, 279.4],
    ] as const) {
      const window = { x0: 10, y0: 10, x1: width - 10, y1: height - 10 }
      const facts = { title: 'Low ramp', units, set: 'AAAA-BBBB-CCCC', printer: null, combs: false }
      const { draw, corner, side } = squarePage(window, { ...facts, command: 'traceply gauge NAME' })
      const drawing = draw()
      expect(side).toBe(150)
      const far = { x: corner.x + side, y: corner.y + side }
      const diagonals = [pathOf(corner, far), pathOf({ x: corner.x, y: far.y }, { x: far.x, y: corner.y })]
      for (const { text, box } of wordsOf(drawing)) {
        const struck = diagonals.some((line) => pathClip(line, boxCorners(boxGrow(box, 0.5))).length > 0)
        expect([units, text, struck]).toEqual([units, text, false])
        seen++
      }
      // four blanks, each a figure long
      const blanks = drawing.flatMap((mark) =>
        mark.kind === 'stroke' && mark.layer === 'note' && pathLength(mark.path) < 40 ? [mark.path] : [],
      )
      expect(blanks).toHaveLength(4)
      for (const blank of blanks)
        for (const line of diagonals)
          for (const end of [blank.start, blank.pieces[0]!.to])
            expect(pathDistance(line, end)).toBeGreaterThan(1)
    }
  expect(seen).toBeGreaterThan(60)
})

it('each diagonal has its letter at both its ends, nearer to it than to the other: A rises to the right', () => {
  // windows for a square of 150, 100 and 50 mm
  for (const [width, height] of [
    [190, 277],
    [135, 200],
    [90, 150],
  ] as const) {
    const window = { x0: 0, y0: 0, x1: width, y1: height }
    const facts = {
      title: 'Low ramp',
      units: 'in',
      set: 'AAAA-BBBB-CCCC',
      printer: null,
      combs: false,
    } as const
    const { draw, corner, side } = squarePage(window, { ...facts, command: 'traceply gauge NAME' })
    const words = wordsOf(draw())
    const lines = {
      A: [corner, { x: corner.x + side, y: corner.y + side }],
      B: [
        { x: corner.x, y: corner.y + side },
        { x: corner.x + side, y: corner.y },
      ],
    } as const
    for (const [letter, line] of Object.entries(lines)) {
      const own = words.filter(({ text }) => text === letter)
      expect([side, letter, own.length]).toEqual([side, letter, 3])
      for (const end of line) {
        const near = own.filter(({ box }) => Math.hypot(box.x0 - end.x, box.y0 - end.y) < 0.15 * side + 10)
        expect([side, letter, near.length]).toEqual([side, letter, 1])
        const off = ([a, b]: (typeof lines)['A']): number =>
          pathDistance(pathOf(a, b), {
            x: (near[0]!.box.x0 + near[0]!.box.x1) / 2,
            y: (near[0]!.box.y0 + near[0]!.box.y1) / 2,
          })
        expect(off(line)).toBeLessThan(0.3 * off(letter === 'A' ? lines.B : lines.A))
      }
    }
    expect(overlaps(words)).toEqual([])
    for (const { text, box } of words)
      if (text === 'A' || text === 'B')
        for (const [a, b] of Object.values(lines))
          expect(pathClip(pathOf(a, b), boxCorners(boxGrow(box, 0.3))), `${side} ${text}`).toEqual([])
  }
})

it('for inch rules the true lengths of sides and diagonals stand in inches too, to a thirty-second', () => {
  const window = { x0: 10, y0: 10, x1: 205.9, y1: 269.4 }
  const facts = { title: null, set: 'AAAA-BBBB-CCCC', printer: null, combs: false, command: 'gauge' }
  const said = (units: 'mm' | 'in') => wordsOf(squarePage(window, { ...facts, units }).draw())
  const inches = said('in').flatMap(({ text }) => /([\d /]+[+–]?) in\)?$/.exec(text)?.[1] ?? [])
  const values = inches.map((words) => {
    const [whole, over, under] = words.match(/\d+/g)!.map(Number) as [number, number, number]
    return whole + over / under + (words.endsWith('+') ? 1 / 32 : words.endsWith('–') ? -1 / 32 : 0)
  })
  const near = (mm: number) => values.filter((value) => Math.abs(value * 25.4 - mm) <= 25.4 / 64).length
  // of a square of 150 mm
  expect(near(150)).toBe(2)
  expect(near(150 * Math.SQRT2)).toBe(2)
  expect(said('mm').some(({ text }) => / in\)?$/.test(text))).toBe(false)
})

it('for inch rules the page says what it bears, both signs, and how inches are typed; for others nothing of it', () => {
  const window = { x0: 10, y0: 10, x1: 205.9, y1: 269.4 }
  const facts = { title: null, set: 'AAAA-BBBB-CCCC', printer: null, combs: false, command: 'gauge' }
  const said = (units: 'mm' | 'in') =>
    wordsOf(squarePage(window, { ...facts, units }).draw())
      .map(({ text }) => text)
      .join(' ')
  const inches = said('in')
  const [, mm, over, under] = /Off by more than ([\d.]+) mm \((\d+)\/(\d+) in\)/.exec(inches)!.map(Number)
  // never more than the mm say, and the next 64th would be
  expect((over! / under!) * 25.4).toBeLessThanOrEqual(mm!)
  expect((over! / under! + 1 / 64) * 25.4).toBeGreaterThan(mm!)
  expect(inches).toContain('+ is 1/32 more, – is 1/32 less')
  const typed = /Inches go as (\S+in)\./.exec(inches)![1]!
  const reading = readReading(typed, squareSide)
  if ('error' in reading) throw new Error(reading.error)
  expect(readingFault('--across', reading)).toBe(null)
  expect(said('mm')).not.toMatch(/\/\d+ in|is 1\/32|Inches/)
})

it('allows 1 in 300, and on a small square names the longer ruler too, where a rule can tell that', () => {
  const facts = { title: null, set: 'AAAA-BBBB-CCCC', printer: null, combs: false, command: 'gauge' }
  const sides = [210, 140, 100, 60].map((width) => {
    const page = squarePage({ x0: 0, y0: 0, x1: width, y1: width * 1.4 }, { ...facts, units: 'mm' })
    const words = wordsOf(page.draw()).map(({ text }) => text)
    const said = words.join(' ')
    const told = /Off by more than ([\d.]+) mm(?:, or the ruler of (\d+) mm by more than ([\d.]+) mm)?:/.exec(
      said,
    )!
    const [, off, length, far] = told.map(Number) as [number, number, number, number]
    for (const [of, most] of Number.isNaN(length)
      ? [[page.side, off]]
      : ([
          [page.side, off],
          [length, far],
        ] as const)) {
      expect(most! / of!).toBeLessThanOrEqual(1 / 300)
      expect((most! + 0.05) / of!).toBeGreaterThan(1 / 300)
    }
    // the ruler across is as long as that: its last figure
    if (!Number.isNaN(length)) expect(words).toContain(`${length}`)
    return [page.side, !Number.isNaN(length)]
  })
  expect(sides).toEqual([
    [150, false],
    [100, true],
    [50, true],
    [50, false],
  ])
})

it('words and blanks of a smaller square lie on no side, no diagonal and over nothing else', () => {
  let seen = 0
  for (const units of ['mm', 'in'] as const)
    for (const combs of [true, false])
      for (const [width, height, of] of [
        [170, 257, 100],
        [175.9, 239.4, 100],
        [130, 217, 50],
        [114.3, 177.8, 50],
      ] as const) {
        const window = { x0: 20, y0: 20, x1: 20 + width, y1: 20 + height }
        const facts = { title: 'Low ramp of a long name', units, set: 'MMMM-MMMM-MMMM', printer: null, combs }
        const { draw, corner, side } = squarePage(window, { ...facts, command: 'traceply gauge NAME' })
        expect(side).toBe(of)
        const drawing = draw()
        const strokes = drawing.flatMap((mark) => (mark.kind === 'stroke' ? [mark] : []))
        const words = wordsOf(drawing.filter((mark) => mark.kind === 'text' && mark.layer === 'note'))
        words.forEach(({ text, box }, i) => {
          const name = `${units} ${side} ${text}`
          for (const { path } of strokes)
            expect([name, pathClip(path, boxCorners(boxGrow(box, 0.3))).length]).toEqual([name, 0])
          for (const other of words.slice(i + 1))
            expect([name, boxOverlaps(box, other.box)]).toEqual([name, false])
          seen++
        })
        // four blanks inside the square, each with room to write over it
        const far = { x: corner.x + side, y: corner.y + side }
        const blanks = strokes.filter(({ layer, path }) => layer === 'note' && pathLength(path) < 40)
        expect(blanks).toHaveLength(4)
        for (const { path } of blanks) {
          const [a, b] = [path.start, path.pieces[0]!.to]
          const room = a.x === b.x ? { x: -6, y: 0 } : { x: 0, y: 6 }
          for (const p of [
            a,
            b,
            { x: a.x + room.x, y: a.y + room.y },
            { x: b.x + room.x, y: b.y + room.y },
          ]) {
            expect(p.x > corner.x && p.x < far.x && p.y > corner.y && p.y < far.y).toBe(true)
            for (const line of [
              pathOf(corner, far),
              pathOf({ x: corner.x, y: far.y }, { x: far.x, y: corner.y }),
            ])
              expect(pathDistance(line, p)).toBeGreaterThan(1)
          }
          for (const { path: other } of strokes)
            if (other !== path)
              expect(pathClip(other, boxCorners(boxGrow(pathBounds(path), 0.3)))).toEqual([])
        }
      }
  expect(seen).toBeGreaterThan(250)
})

it('a corrected square sends on to an uncorrected one, in the browser and on the command line', () => {
  const window = { x0: 10, y0: 10, x1: 205.9, y1: 269.4 }
  const facts = { title: null, units: 'mm', set: 'AAAA-BBBB-CCCC', printer: 'hall', combs: false } as const
  const words = wordsOf(squarePage(window, { ...facts, command: 'traceply square' }).draw())
  const said = words.map(({ text }) => text).join(' ')
  expect(said).toContain('Save it under "printer" in the browser, or type: traceply square')
})

it('the combs at the edges strike through no word and no ruler, however narrow the margins', () => {
  let seen = 0
  for (const name of paperNames)
    for (const units of ['mm', 'in'] as const)
      for (const margin of [1, 3, 10, 20]) {
        const paper = paperOf(name)
        const margins = { top: margin, right: margin, bottom: margin, left: margin }
        const sheet = { paper, margins, correction: noCorrection }
        const combs = edgeCombs(paper)
        const all = squareDraft(sheet, 'AAAA-BBBB-CCCC', units, null, null, true).draw()
        const rest = all.slice(0, all.length - combs.length)
        expect(all.slice(rest.length)).toEqual(combs)
        const ends = combs.flatMap((mark) =>
          mark.kind === 'stroke' ? [mark.path.start, mark.path.pieces[0]!.to] : [],
        )
        // a tick is 2.6 mm long: one that crosses a line has an end nearer to it than that
        const lines = rest.flatMap((mark) => (mark.kind === 'stroke' ? [mark.path] : []))
        const near = lines.filter((line) => ends.some((end) => pathDistance(line, end) < 1.4))
        expect([name, units, margin, near.length]).toEqual([name, units, margin, 0])
        const figures = wordsOf(combs)
        for (const { text, box } of wordsOf(rest)) {
          const { x0, y0, x1, y1 } = boxGrow(box, 0.3)
          const struck =
            ends.some(({ x, y }) => x > x0 && x < x1 && y > y0 && y < y1) ||
            figures.some((figure) => boxOverlaps(figure.box, box))
          expect([name, units, margin, text, struck]).toEqual([name, units, margin, text, false])
          seen++
        }
      }
  expect(seen).toBeGreaterThan(500)
})
