import { expect, it } from 'vitest'
import { offsetsPages } from '../../src/booklet/offsets/offsets-page.ts'
import { offsetRows } from '../../src/booklet/offsets/offsets-rows.ts'
import type { PaperName } from '../../src/design/design.ts'
import { type Layer, layers } from '../../src/drawing/drawing.ts'
import { pointsBounds } from '../../src/geometry/bounds.ts'
import { pointBetween } from '../../src/geometry/point.ts'
import { defaultMargins, paperOf } from '../../src/page/sheet/paper.ts'
import { sheetWindow } from '../../src/page/sheet/sheet.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import type { Pt } from '../support/pt.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { withOffsets } from './solved.ts'

/** Tall and low ones in inches and mm, and every template. */
const ramp = ([inches, deck, surface, behind]: readonly [
  boolean,
  number,
  number,
  number,
]): string => `title: Boathouse quarter
units: ${inches ? 'in' : 'mm'}
ramps:
  - width: ${inches ? 48 : 1216}
    height: { deck: ${deck} }
    transition: { circle: { surface: ${surface} } }
    toe: ${inches ? '1 1/2' : 40}
    deck: ${behind}
    skin: [${inches ? '3/8 plywood, 1/4' : '9 plywood, 6'} hardboard]
    coping: { outside: ${inches ? '2 3/8' : '60.3'} }
`
const texts: readonly (readonly [string, string])[] = [
  ...templates.map((name) => [name, templateText(name)] as const),
  ...(
    [
      [true, 58, 90, 30],
      [true, 72, 96, 24],
      [true, 10, 48, 20],
      [true, 36, 60, 48],
      [false, 1500, 2300, 700],
      [false, 1200, 1500, 300],
      [false, 300, 1600, 400],
      [false, 900, 1400, 1000],
    ] as const
  ).map((of) => [of.join(' '), ramp(of)] as const),
]

const papers: readonly PaperName[] = ['letter', 'a4']

const drawn = (text: string, paper: PaperName) => {
  const { design, quarters, all } = withOffsets(text)
  const window = sheetWindow({
    paper: paperOf(paper),
    margins: defaultMargins(paper),
    correction: noCorrection,
  })
  const offsets = all[0]!
  const pages = offsetsPages(window, {
    title: design.title,
    units: design.units,
    offsets,
    outline: quarters[0]!.side!.outline,
  })
  return {
    pages: pages.map((page) => opened(page)),
    offsets,
    window,
    rows: offsetRows(offsets, design.units),
  }
}

const layerOf = (order: number): Layer => layers[Math.floor(order / 1e6)]!
const distance = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y)

/** The dots of a drawing in the order of its marks: filled circles. */
const dotsOf = ({ lines }: ReturnType<typeof opened>, layer: Layer): readonly Pt[] =>
  lines
    .filter(({ kind, order, points }) => kind === 'fill' && layerOf(order) === layer && points.length > 5)
    .map(({ points }) => {
      const { x0, y0, x1, y1 } = pointsBounds(points)
      return pointBetween({ x: x0, y: y0 }, { x: x1, y: y1 }, 0.5)
    })

it.each(texts)(
  'each mark has its name beside its dot, on the drawing or on the notch drawn larger, %s',
  (_, text) => {
    for (const paper of papers) {
      const { pages, rows } = drawn(text, paper)
      const [page] = pages as [(typeof pages)[0]]
      const dots = dotsOf(page, 'mark')
      const larger = [...dots.slice(rows.length), ...dotsOf(page, 'note')]
      for (const [i, { mark }] of rows.entries()) {
        const named = page.words.filter(({ text: said, order }) => said === mark && layerOf(order) === 'mark')
        const away = named.map(({ corners }) => {
          const { x0, y0, x1, y1 } = pointsBounds(corners)
          const near = (p: Pt): number =>
            distance(p, { x: Math.min(Math.max(p.x, x0), x1), y: Math.min(Math.max(p.y, y0), y1) })
          return Math.min(...[dots[i]!, ...larger].map(near))
        })
        expect(Math.min(...away), `${mark} on ${paper}`).toBeLessThan(4.5)
        // none stands nearer to another dot of the drawing
        expect(named.length, `${mark} on ${paper}`).toBeLessThan(3)
      }
    }
  },
)

it.each(texts)('the notch is drawn larger on paper and no page is half blank, %s', (_, text) => {
  for (const paper of papers) {
    const { pages, rows, window } = drawn(text, paper)
    const corners = rows.filter(({ mark }) => /^[A-Z]$/.test(mark))
    if (corners.length > 0) {
      const dots = dotsOf(pages[0]!, 'mark')
      // LIP and the corners of the notch come again after all marks, to one larger scale about LIP
      const lip = rows.findIndex(({ mark }) => mark === 'LIP')
      const again = dots.slice(rows.length)
      expect(again.length).toBe(corners.length + 1)
      const scale = distance(again[0]!, again.at(-1)!) / distance(rows[lip]!.at, rows.at(-1)!.at)
      // a round seat may open where the lip is
      const all = again.flatMap((p, k) =>
        again
          .slice(k + 1)
          .map((q) => distance(p, q))
          .filter((one) => one > 5 * scale),
      )
      // dots are 1.6 mm wide, names 3 mm high
      expect(Math.min(...all), paper).toBeGreaterThan(4.6)
      for (const [k, corner] of corners.entries()) {
        expect(
          Math.abs(again[k + 1]!.x - again[0]!.x - scale * (corner.at.x - rows[lip]!.at.x)),
        ).toBeLessThan(0.01)
        expect(
          Math.abs(again[k + 1]!.y - again[0]!.y - scale * (corner.at.y - rows[lip]!.at.y)),
        ).toBeLessThan(0.01)
      }
    }
    for (const [i, { words, lines }] of pages.entries()) {
      const box = pointsBounds([
        ...words.flatMap(({ corners: own }) => own),
        ...lines.flatMap(({ points }) => points),
      ])
      expect(
        (box.x1 - box.x0) / (window.x1 - window.x0),
        `width of page ${i + 1} on ${paper}`,
      ).toBeGreaterThan(0.9)
      // as much of it down to what stands at its foot
      const heights = [...words.flatMap(({ corners: own }) => own), ...lines.flatMap(({ points }) => points)]
        .map(({ y }) => y)
        .sort((a, b) => a - b)
      const gaps = heights.slice(1).map((y, k) => y - heights[k]!)
      const blank = Math.max(heights[0]! - window.y0, window.y1 - heights.at(-1)!, ...gaps)
      expect(blank / (window.y1 - window.y0), `blank of page ${i + 1} on ${paper}`).toBeLessThan(0.35)
    }
  }
})
