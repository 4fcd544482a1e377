import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { offsetsPages } from '../../src/booklet/offsets/offsets-page.ts'
import { offsetRows } from '../../src/booklet/offsets/offsets-rows.ts'
import type { PaperName } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { pointBetween } from '../../src/geometry/point.ts'
import { cautionsOf } from '../../src/page/pages/cautions.ts'
import { defaultMargins, paperOf } from '../../src/page/sheet/paper.ts'
import { sheetWindow } from '../../src/page/sheet/sheet.ts'
import { letters } from '../../src/pattern/pens.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { above, below, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { platform } from '../support/platform.ts'
import type { Pt } from '../support/pt.ts'
import { type PdfPageRead, pathPoints, readPdf } from '../support/read-pdf.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { offsetsUnlessStopped, withOffsets } from './solved.ts'
import { overlaps, wordsOf } from './words.ts'

/** The pages of the first ramp as they come back from the file. */
const printedAnew = async (name: string, paper: PaperName, every?: number) => {
  const { design, quarters, all } = withOffsets(templateText(name), every)
  const sheet = { paper: paperOf(paper), margins: defaultMargins(paper), correction: noCorrection }
  const window = sheetWindow(sheet)
  const drawings = offsetsPages(window, {
    title: design.title,
    units: design.units,
    offsets: all[0]!,
    outline: quarters[0]!.side!.outline,
  })
  const { width, height } = sheet.paper
  const { bytes } = await writePdf(
    {
      title: design.title,
      subject: 'offsets',
      attachments: [],
      pages: drawings.map((drawing, i) => ({
        width,
        height,
        draw: () => drawing,
        label: `${i}`,
        bookmark: `${i}`,
      })),
    },
    platform,
  )
  const points = 72 / 25.4
  const box = {
    x0: window.x0 * points,
    y0: window.y0 * points,
    x1: window.x1 * points,
    y1: window.y1 * points,
  }
  return { pages: (await readPdf(bytes)).pages, offsets: all[0]!, units: design.units, box }
}

const read = new Map<string, ReturnType<typeof printedAnew>>()

/** Printed and read back once for all that look at it. */
const printed = (name: string, paper: PaperName, every?: number): ReturnType<typeof printedAnew> => {
  const key = `${name} ${paper} ${every}`
  const before = read.get(key) ?? printedAnew(name, paper, every)
  read.set(key, before)
  return before
}

/** The dots of a page: filled circles, by their boxes. */
const dots = (page: PdfPageRead) =>
  page.fills
    .filter((f) => f.layer === 'mark' && f.path.some((s) => s.kind === 'cubic'))
    .map((f) => {
      const run = pathPoints(f.path, 8).flat()
      const [xs, ys] = [run.map((p) => p.x), run.map((p) => p.y)]
      return {
        x: (Math.min(...xs) + Math.max(...xs)) / 2,
        y: (Math.min(...ys) + Math.max(...ys)) / 2,
      }
    })

const papers: readonly PaperName[] = ['letter', 'a4', 'legal', 'a0']

describe.each(templates.flatMap((name) => papers.map((paper) => [name, paper] as const)))(
  'the page of %s on %s',
  (name, paper) => {
    it('has its marks where the stations are, to one scale', async () => {
      const { pages, offsets } = await printed(name, paper)
      const found = dots(pages[0]!)
      const marks = [offsets.toe, ...offsets.stations, offsets.lip, ...offsets.notch]
      const [a, b] = [found[0]!, found[offsets.stations.length + 1]!]
      // toe and lip give place and scale of the drawing; all others must follow
      const scale = Math.hypot(b.x - a.x, b.y - a.y) / offsets.chord
      expect(scale).toBeGreaterThan(0)
      marks.forEach((p, i) => {
        assertNear(found[i]!.x, a.x + (p.x - offsets.toe.x) * scale, 0.01, `x of mark ${i}`)
        assertNear(found[i]!.y, a.y + (p.y - offsets.toe.y) * scale, 0.01, `y of mark ${i}`)
      })
      // and the outline, known by its pen of 0.6 mm, is drawn to the same scale: its box is the panel's
      const outline = pages[0]!.strokes.filter((s) => Math.abs(s.width - (0.6 * 72) / 25.4) < 0.01)
      const widest = Math.max(
        ...outline.map((s) => {
          const xs = pathPoints(s.path, 4)
            .flat()
            .map((p) => p.x)
          return Math.max(...xs) - Math.min(...xs)
        }),
      )
      assertNear(widest, offsets.panel.length * scale, 0.01, 'length of the outline')
    })

    it('carries every row of the table, and nothing leaves the margins or lies in `cut`', async () => {
      const { pages, offsets, units, box } = await printed(name, paper)
      const words = pages.flatMap((page) => page.texts.map((t) => t.text))
      for (const row of offsetRows(offsets, units)) {
        expect(words).toContain(row.mark)
        const whole = /^\d+(?= |\.|$)/.exec(row.back)?.[0]
        if (whole) expect(words).toContain(whole)
      }
      for (const page of pages) {
        const { strokes, fills, texts } = page
        expect([...strokes, ...fills, ...texts].some((mark) => mark.layer === 'cut')).toBe(false)
        for (const t of texts) {
          above(t.x, box.x0 - 0.1, t.text)
          below(t.x + t.width, box.x1 + 0.1, t.text)
          above(t.y, box.y0 - 0.1, t.text)
          below(t.y + t.size * 0.7, box.y1 + 0.5, t.text)
        }
        for (const p of [...strokes, ...fills].flatMap((mark) => pathPoints(mark.path, 2).flat())) {
          above(p.x, box.x0 - 0.1)
          below(p.x, box.x1 + 0.1)
          above(p.y, box.y0 - 0.1)
          below(p.y, box.y1 + 0.1)
        }
      }
    })

    it('prints no word over another', async () => {
      const { pages } = await printed(name, paper)
      for (const { texts } of pages) {
        const boxes = texts.map((t) => ({ t, x0: t.x, x1: t.x + t.width, y0: t.y, y1: t.y + t.size * 0.7 }))
        boxes.forEach((one, i) => {
          for (const other of boxes.slice(i + 1)) {
            const over =
              one.x0 < other.x1 - 0.3 &&
              other.x0 < one.x1 - 0.3 &&
              one.y0 < other.y1 - 0.3 &&
              other.y0 < one.y1 - 0.3
            if (over) throw new Error(`“${one.t.text}” lies over “${other.t.text}”`)
          }
        })
      }
    })
  },
)

describe('the page', () => {
  it('shows its figures 3.5 mm high or higher, says how to use them in six steps or fewer, and the cautions', async () => {
    for (const name of templates) {
      const { pages, offsets } = await printed(name, 'a4')
      const [{ texts }] = pages as [PdfPageRead]
      // capitals are 0.698 em high
      const table = texts.filter((t) => /^\d+$/.test(t.text) && t.size * 0.698 * (25.4 / 72) >= 3.5)
      expect(table.length).toBeGreaterThanOrEqual(2 * offsets.stations.length)
      const words = texts.map((t) => t.text).join(' ')
      expect(words).not.toMatch(/\bsafe\b|complies/i)
      for (const caution of cautionsOf(offsets.notch.length > 0))
        expect(words).toContain(caution.split(':')[0]!.slice(0, 30))
      // numbers of the steps, 2.7 mm high at this page's scale of 190/186
      const steps = texts.filter(
        (t) => /^[1-9]$/.test(t.text) && Math.abs(t.size * 0.698 * (25.4 / 72) - 2.758) < 0.02,
      )
      expect(steps.length).toBeGreaterThanOrEqual(4)
      expect(steps.length).toBeLessThanOrEqual(6)
    }
  })

  it('goes on to further pages where the marks are many, with each of them once', async () => {
    const { pages, offsets } = await printed('quarter-mm-round', 'a4', 20)
    expect(pages.length).toBeGreaterThan(1)
    const high = (t: PdfPageRead['texts'][number]) => t.size * 0.698 * (25.4 / 72)
    offsets.stations.forEach((_, i) => {
      // in the table, not on the drawing: at its left edge
      const left = Math.min(...pages[0]!.texts.map((t) => t.x))
      const found = pages.flatMap((page) =>
        page.texts.filter((t) => t.text === `${i + 1}` && high(t) > 3.4 && t.x < left + 1),
      )
      expect(found.length).toBe(1)
    })
    expect(pages[0]!.texts.some((t) => t.text.includes('next page'))).toBe(true)
  })
})

it('a long note beside the table is broken over two lines, between the lines of its row, not made too small to read', () => {
  const text = `title: Round seats
units: in
ramps:
  - width: 48
    height: { deck: 24 }
    transition: { circle: { surface: 72 } }
    toe: 1 1/2
    deck: 20
    skin: [3/8 plywood]
    deck-board: 3/8 plywood
    coping: { outside: 2 3/8, seat: round }
`
  // marks many enough for smaller figures too
  for (const paper of ['letter', 'a4'] as const)
    for (const every of [152.4, 101.6, 76.2, 60, 50]) {
      const { design, quarters, all } = withOffsets(text, every)
      const pages = offsetsPages(
        sheetWindow({ paper: paperOf(paper), margins: defaultMargins(paper), correction: noCorrection }),
        { title: design.title, units: design.units, offsets: all[0]!, outline: quarters[0]!.side!.outline },
      )
      const words = pages.flatMap((page) => wordsOf(page))
      const seat = words.filter(({ text: said }) => /^middle of|radius 1/.test(said))
      expect(seat.map(({ text: said }) => said).join(' ')).toBe('middle of the seat, radius 1 3/16')
      for (const { tall } of seat) above(tall, letters.least)
      for (const page of pages) {
        expect(overlaps(wordsOf(page))).toEqual([])
        const level = opened(page).lines.filter(
          ({ kind, points }) => kind === 'stroke' && points.length === 2 && points[0]!.y === points[1]!.y,
        )
        for (const { box, tall } of wordsOf(page).filter((word) =>
          seat.some(({ text: said }) => said === word.text),
        ))
          for (const {
            points: [from, to],
          } of level)
            hold(
              from!.y > box.y1 || from!.y < box.y1 - tall || to!.x < box.x0 || from!.x > box.x1,
              'no line runs through it',
            )
      }
    }
})

it('no line runs through the letter of the detail', () => {
  let [seen, looked] = [0, 0]
  for (const name of templates)
    for (const paper of papers) {
      const { design, quarters, all } = withOffsets(templateText(name))
      const window = sheetWindow({
        paper: paperOf(paper),
        margins: defaultMargins(paper),
        correction: noCorrection,
      })
      const [page] = offsetsPages(window, {
        title: design.title,
        units: design.units,
        offsets: all[0]!,
        outline: quarters[0]!.side!.outline,
      })
      const { words, lines } = opened(page!)
      const letter = words.find(({ text }) => text === 'X')
      if (!letter) continue
      seen++
      const [a, b, c] = letter.corners as [Pt, Pt, Pt]
      // capitals alone, and half of a thick line
      const air = 0.3
      const foot = a.y + ((c.y - a.y) * 0.3) / 1.3
      const isIn = ({ x, y }: Pt) => x > a.x - air && x < b.x + air && y > foot - air && y < c.y + air
      const runsIn = (from: Pt, to: Pt): boolean => {
        if (Math.max(from.y, to.y) < foot - air || Math.min(from.y, to.y) > c.y + air) return false
        if (Math.max(from.x, to.x) < a.x - air || Math.min(from.x, to.x) > b.x + air) return false
        return Array.from({ length: 401 }, (_, k) => pointBetween(from, to, k / 400)).some(isIn)
      }
      hold(runsIn({ x: a.x - 5, y: a.y }, { x: c.x + 5, y: c.y }), 'a line through it is noticed')
      for (const { kind, points } of lines)
        if (kind === 'stroke')
          for (let i = 1; i < points.length; i++) {
            hold(!runsIn(points[i - 1]!, points[i]!), `${name} ${paper}`)
            looked++
          }
    }
  expect(seen).toBeGreaterThan(20)
  expect(looked).toBeGreaterThan(100 * seen)
})

describe('the page of any ramp', () => {
  const anyRamp = fc.record({
    inches: fc.boolean(),
    radius: fc.integer({ min: 1000, max: 3000 }),
    share: fc.double({ min: 0.12, max: 0.87, noNaN: true }),
    deck: fc.integer({ min: 300, max: 1000 }),
    seat: fc.constantFrom('round', 'square', null),
    every: fc.oneof(fc.constant(null), fc.integer({ min: 30, max: 500 })),
    paper: fc.constantFrom(...papers),
  })

  it('keeps its words on the page and apart from each other', () => {
    let drawn = 0
    fc.assert(
      fc.property(anyRamp, ({ inches, radius, share, deck, seat, every, paper }) => {
        const unit = inches ? 25.4 : 1
        const pipe = `{ outside: ${inches ? '2 3/8' : '60.3'}, seat: ${seat} }`
        const text = `title: Boathouse quarter
units: ${inches ? 'in' : 'mm'}
ramps:
  - width: ${inches ? 48 : 1216}
    height: { frame: ${Math.round((radius * share) / unit)} }
    transition: { circle: { surface: ${Math.round(radius / unit)} } }
    toe: ${inches ? '1 1/2' : 40}
    deck: ${Math.round(deck / unit)}
    skin: [${inches ? '3/8' : 9} plywood]
    coping: ${seat ? pipe : 'none'}
`
        if ('problems' in readDesign(text)) return
        const found = offsetsUnlessStopped(text, every ?? (inches ? 152.4 : 150))
        if (!found) return
        drawn++
        const { design, quarters, all } = found
        const window = sheetWindow({
          paper: paperOf(paper),
          margins: defaultMargins(paper),
          correction: noCorrection,
        })
        const pages = offsetsPages(window, {
          title: design.title,
          units: design.units,
          offsets: all[0]!,
          outline: quarters[0]!.side!.outline,
        })
        for (const words of pages.map((page) => wordsOf(page))) {
          for (const { text: said, box } of words)
            if (
              box.x0 < window.x0 - 0.1 ||
              box.x1 > window.x1 + 0.1 ||
              box.y0 < window.y0 - 0.1 ||
              box.y1 > window.y1 + 0.1
            )
              throw new Error(`“${said}” leaves the page`)
          expect(overlaps(words)).toEqual([])
        }
      }),
      { numRuns: 120 },
    )
    expect(drawn).toBeGreaterThan(80)
  })
})
