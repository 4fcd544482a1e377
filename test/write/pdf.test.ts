import { expect, test } from 'vitest'
import { type Drawing, group, layers, stroke, text } from '../../src/drawing/drawing.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import {
  type Affine,
  affineApply,
  affineInvert,
  affineRotate,
  affineThen,
} from '../../src/geometry/affine.ts'
import { type Path, pathOf, polygonOf, rectangle } from '../../src/geometry/path.ts'
import { writePdf } from '../../src/write/pdf.ts'
import type { PdfInput, PdfPage } from '../../src/write/pdf-input.ts'
import { familyWidth } from '../support/family.ts'
import { assertNear } from '../support/near.ts'
import { platform } from '../support/platform.ts'
import { type PdfRead, pathPoints, readPdf } from '../support/read-pdf.ts'

// 1 in = 72 pt = 25.4 mm (ISO 32000-1, 8.3.2.3)
const mm = 25.4 / 72
const pen = { width: 0.3 }

const page = (drawing: Drawing, more: Partial<PdfPage> = {}): PdfPage => ({
  width: 210,
  height: 297,
  draw: () => drawing,
  label: '1',
  bookmark: 'one',
  ...more,
})

const document = (pages: readonly PdfPage[], more: Partial<PdfInput> = {}): PdfInput => ({
  title: 'Low pair',
  subject: 'full size',
  attachments: [],
  pages,
  ...more,
})

const print = async (input: PdfInput): Promise<PdfRead> => readPdf((await writePdf(input, platform)).bytes)
const printMarks = async (...drawing: Drawing) => (await print(document([page(drawing)]))).pages[0]!

/** An arc of a circle about (cx, cy) from angle a by `sweep`. */
const arcPath = (cx: number, cy: number, r: number, a: number, sweep: number): Path => ({
  start: { x: cx + r * Math.cos(a), y: cy + r * Math.sin(a) },
  pieces: [
    {
      kind: 'arc',
      centre: { x: cx, y: cy },
      sweep,
      to: { x: cx + r * Math.cos(a + sweep), y: cy + r * Math.sin(a + sweep) },
    },
  ],
  closed: false,
})

test('a line is drawn from point to point in real size', async () => {
  const { strokes } = await printMarks(
    stroke('cut', pathOf({ x: 10, y: 20 }, { x: 110, y: 20 }, { x: 110, y: 270.5 }), pen),
  )
  expect(strokes).toHaveLength(1)
  expect(strokes[0]!.path.map((s) => s.kind)).toEqual(['move', 'line', 'line'])
  const [points] = pathPoints(strokes[0]!.path, 1)
  const expected = [
    [10, 20],
    [110, 20],
    [110, 270.5],
  ]
  points!.forEach((p, i) => {
    assertNear(p.x * mm, expected[i]![0]!, 5e-5)
    assertNear(p.y * mm, expected[i]![1]!, 5e-5)
  })
})

test('a closed path is closed, also where its last piece does not lead back', async () => {
  const triangle = polygonOf({ x: 0, y: 0 }, { x: 50, y: 0 }, { x: 0, y: 50 })
  const { strokes } = await printMarks(stroke('cut', triangle, pen))
  expect(strokes[0]!.path.at(-1)!.kind).toBe('close')
  const points = pathPoints(strokes[0]!.path, 1)[0]!
  expect(points.map((p) => [Math.round(p.x * mm), Math.round(p.y * mm)])).toEqual([
    [0, 0],
    [50, 0],
    [0, 50],
    [0, 0],
  ])
})

// radius 3 m as the design's largest; the maps are a corrected printer's and a turned layout's
const skewed: Affine = [1.0043, 0.0021, -0.0037, 0.9962, 0.4, -0.7]
test.each([
  ['as it is', [1, 0, 0, 1, 0, 0]],
  ['through a skewed map', skewed],
  ['turned by a quarter', affineThen(affineRotate(Math.PI / 2), [1, 0, 0, 1, 210, 0])],
  ['mirrored', [-1, 0, 0, 1, 210, 0]],
  ['turned, then skewed', affineThen(affineThen(affineRotate(0.3), [1, 0, 0, 1, 100, 20]), skewed)],
] as const satisfies readonly (readonly [string, Affine])[])(
  'an arc of 3 m stays within 0.001 mm of its circle, %s',
  async (_, map) => {
    const centre = { x: -2900, y: 100 }
    const arc = arcPath(centre.x, centre.y, 3000, -0.03, 0.06)
    const { strokes } = await printMarks(group(map, [stroke('cut', arc, pen)]))
    const back = affineInvert(map)
    let checked = 0
    for (const p of pathPoints(strokes[0]!.path, 200)[0]!) {
      const q = affineApply(back, { x: p.x * mm, y: p.y * mm })
      assertNear(Math.hypot(q.x - centre.x, q.y - centre.y), 3000, 1e-3, 'radius')
      checked++
    }
    expect(checked).toBeGreaterThan(200)
    const ends = pathPoints(strokes[0]!.path, 1)[0]!
    for (const [p, angle] of [
      [ends[0]!, -0.03],
      [ends.at(-1)!, 0.03],
    ] as const) {
      const q = affineApply(back, { x: p.x * mm, y: p.y * mm })
      assertNear(Math.atan2(q.y - centre.y, q.x - centre.x), angle, 1e-3 / 3000, 'end of the arc')
    }
  },
)

test('a whole circle of 3 m keeps to 0.001 mm at every angle', async () => {
  const { strokes } = await printMarks(stroke('cut', arcPath(0, 0, 3000, 0.2, 2 * Math.PI), pen))
  const points = pathPoints(strokes[0]!.path, 100)[0]!
  for (const p of points) assertNear(Math.hypot(p.x, p.y) * mm, 3000, 1e-3, 'radius')
  // half a circle leaves the other half unseen: the points go all the way round
  const angles = points.map((p) => Math.atan2(p.y, p.x)).sort((a, b) => a - b)
  const gaps = angles.map((a, i) => (i === 0 ? a + 2 * Math.PI - angles.at(-1)! : a - angles[i - 1]!))
  expect(Math.max(...gaps)).toBeLessThan(0.02)
})

test('an arc enlarged by its group keeps to 0.001 mm on paper', async () => {
  const { strokes } = await printMarks(
    group([20, 0, 0, 20, 0, 0], [stroke('note', arcPath(0, 0, 150, 0, 1.5), pen)]),
  )
  for (const p of pathPoints(strokes[0]!.path, 100)[0]!) assertNear(Math.hypot(p.x, p.y) * mm, 3000, 1e-3)
})

test('pen width, dash and grey stay what they are on paper, whatever the map', async () => {
  const line = stroke('mark', pathOf({ x: 0, y: 0 }, { x: 10, y: 0 }), {
    width: 0.25,
    dash: [3, 1.5],
    grey: 0.4,
  })
  const { strokes } = await printMarks(
    line,
    group([0.05, 0, 0, 0.05, 20, 20], [line]),
    group([7, 0, 2, 3, 0, 0], [line]),
  )
  expect(strokes).toHaveLength(3)
  for (const { width, dash, grey } of strokes) {
    assertNear(width * mm, 0.25, 5e-5, 'width')
    expect(dash).toHaveLength(2)
    assertNear(dash[0]! * mm, 3, 5e-5, 'dash')
    assertNear(dash[1]! * mm, 1.5, 5e-5, 'gap')
    assertNear(grey, 0.4, 1 / 255, 'grey')
  }
})

test('a pen does not leak into the next stroke', async () => {
  const path = pathOf({ x: 0, y: 0 }, { x: 10, y: 0 })
  const { strokes, fills, texts } = await printMarks(
    stroke('mark', path, { width: 1, dash: [2, 2], grey: 0.6 }),
    stroke('mark', path, { width: 0.2 }),
    { kind: 'fill', layer: 'mark', path: rectangle(0, 0, 5, 5), grey: 0.8 },
    text('mark', { x: 5, y: 5 }, 3, 'black'),
    stroke('cut', path, { width: 0.2 }),
  )
  for (const s of strokes.slice(1)) {
    expect([s.dash, s.grey]).toEqual([[], 0])
    assertNear(s.width * mm, 0.2, 5e-5)
  }
  assertNear(fills[0]!.grey, 0.8, 1 / 255)
  expect(texts[0]!.grey).toBe(0)
})

test('pens and faces that come back are set again', async () => {
  const path = pathOf({ x: 0, y: 0 }, { x: 10, y: 0 })
  const pens = [0.5, 0.2, 0.5, 0.2].map((width, i) => ({
    width,
    dash: i % 2 ? [] : [4],
    grey: i % 2 ? 0.2 : 0.6,
  }))
  const { strokes, texts } = await printMarks(
    ...pens.map((p) => stroke('mark', path, p)),
    ...(['bold', 'regular', 'bold'] as const).map((face) => text('mark', { x: 1, y: 1 }, 5, 'lip', { face })),
  )
  strokes.forEach((s, i) => {
    assertNear(s.width * mm, pens[i]!.width, 5e-5)
    assertNear(s.grey, pens[i]!.grey, 1 / 255)
    expect(s.dash).toHaveLength(pens[i]!.dash.length)
  })
  const widths = (['bold', 'regular', 'bold'] as const).map((face) => familyWidth('lip', face) * 5)
  texts.forEach((t, i) => {
    assertNear(t.width * mm, widths[i]!, 1e-3)
  })
})

test('a text starts, turns and is as tall as asked, by the height of its capitals', async () => {
  const { texts } = await printMarks(text('note', { x: 30, y: 40 }, 3.49, 'KEEP', { angle: 0.5 }))
  const [t] = texts
  expect(t!.text).toBe('KEEP')
  assertNear(t!.x * mm, 30, 5e-5)
  assertNear(t!.y * mm, 40, 5e-5)
  assertNear(t!.angle, 0.5, 1e-5)
  // the family's file: capitals are 698 of 1000 high
  assertNear(t!.size * mm, 5, 2e-4)
  assertNear(t!.width * mm, familyWidth('KEEP', 'regular') * 3.49, 1e-3)
})

test.each([
  ['left', 0],
  ['middle', -0.5],
  ['right', -1],
] as const)('a text aligned %s lies where its width says, turned or not', async (align, share) => {
  for (const face of ['regular', 'bold'] as const) {
    const { texts } = await printMarks(
      text('note', { x: 100, y: 100 }, 5, 'WASTE (1)', { align, face, angle: 1 }),
    )
    const width = textWidth('WASTE (1)', 5, face)
    assertNear(texts[0]!.x * mm, 100 + share * width * Math.cos(1), 1e-3)
    assertNear(texts[0]!.y * mm, 100 + share * width * Math.sin(1), 1e-3)
    // the reader's own widths of the letters
    assertNear(texts[0]!.width * mm, width, 1e-3)
  }
})

test('a text takes the whole map along: turned, stretched and mirrored', async () => {
  const map: Affine = [0, 2, -3, 0, 50, 60]
  const { texts } = await printMarks(
    group(map, [text('mark', { x: 5, y: 7 }, 3, 'UP', { angle: 0.2 })]),
    group([-1, 0, 0, 1, 100, 0], [text('mark', { x: 5, y: 7 }, 3, 'UP')]),
  )
  assertNear(texts[0]!.x * mm, -3 * 7 + 50, 5e-5)
  assertNear(texts[0]!.y * mm, 2 * 5 + 60, 5e-5)
  const wanted = [-3 * Math.sin(0.2), 2 * Math.cos(0.2), -3 * Math.cos(0.2), -2 * Math.sin(0.2)]
  texts[0]!.matrix.forEach((v, i) => {
    assertNear(v, wanted[i]!, 1e-5)
  })
  expect(texts[1]!.matrix).toEqual([-1, 0, 0, 1])
})

test('backslashes and parentheses, balanced or not, are printed', async () => {
  const words = 'a \\ b ( c )) d \\( ½ – “é” Ž'
  const { texts } = await printMarks(text('note', { x: 5, y: 7 }, 3, words))
  expect(texts[0]!.text).toBe(words)
})

test('each mark is in its layer and the cut layer holds nothing else; layers lie in their order', async () => {
  const marks: Drawing = [...layers].flatMap((layer, i) => [
    stroke(layer, pathOf({ x: i, y: 0 }, { x: i, y: 10 }), { width: 0.1 * (i + 1) }),
    text(layer, { x: i, y: 50 }, 3, layer),
    { kind: 'fill' as const, layer, path: rectangle(i, 20, i + 0.5, 21), grey: 0 },
    group([1, 0, 0, 1, 100, 0], [stroke(layer, pathOf({ x: i, y: 0 }, { x: i, y: 10 }), pen)]),
  ])
  // mixed on purpose: cut first, then in turns
  const mixed = [...marks.filter((_, i) => i % 2 === 1), ...marks.filter((_, i) => i % 2 === 0)].reverse()
  const read = await print(
    document([page(mixed), page([stroke('cut', pathOf({ x: 0, y: 0 }, { x: 9, y: 9 }), pen)])]),
  )
  const order = ['note', 'joint', 'datum', 'mark', 'cut']
  expect(read.pages[0]!.strokes.map((s) => s.layer)).toEqual(order.flatMap((layer) => [layer, layer]))
  expect(read.pages[0]!.texts.map((t) => t.layer)).toEqual(order)
  expect(read.pages[0]!.texts.map((t) => t.text)).toEqual(order)
  expect(read.pages[0]!.fills.map((f) => f.layer)).toEqual(order)
  for (const s of read.pages[0]!.strokes) {
    const x = pathPoints(s.path, 1)[0]![0]!.x * mm
    assertNear(x % 100, order.indexOf(s.layer), 1e-3, 'the mark that was put into this layer')
  }
  expect(read.pages[1]!.strokes.map((s) => s.layer)).toEqual(['cut'])
  expect(new Set(read.layers.map((layer) => layer.name))).toEqual(new Set(order))
  expect(read.layers).toHaveLength(5)
  expect(read.layers.every((layer) => layer.visible)).toBe(true)
})

// ISO 216 and ANSI sizes at 72 pt an inch
test.each([
  ['A4', 210, 297, 595.2756, 841.8898],
  ['letter', 215.9, 279.4, 612, 792],
  ['A0', 841, 1189, 2383.937, 3370.3937],
  ['a square', 100, 100, 283.4646, 283.4646],
] as const)('a page of %s has its size in points, upright and unturned', async (_, width, height, w, h) => {
  const read = await print(document([page([], { width, height })]))
  expect([read.pages[0]!.width, read.pages[0]!.height]).toEqual([w, h])
  expect([read.pages[0]!.rotate, read.pages[0]!.userUnit]).toEqual([0, 1])
})

test('a landscape page is refused, and one without a size', async () => {
  const write = (width: number, height: number) =>
    writePdf(document([page([]), page([], { width, height })]), platform)
  await expect(write(297, 210)).rejects.toThrow(RangeError)
  await expect(write(297, 210)).rejects.toThrow('page 2 is 297 x 210 mm: a page is upright')
  await expect(write(0, 210)).rejects.toThrow(RangeError)
  await expect(write(Number.NaN, 210)).rejects.toThrow('page 2 is NaN x 210 mm')
  await expect(write(210, Number.POSITIVE_INFINITY)).rejects.toThrow(RangeError)
  await expect(writePdf(document([]), platform)).rejects.toThrow('at least one page')
})

test.each([
  [
    'a point of a stroke in layer cut of page 2',
    stroke('cut', pathOf({ x: 0, y: 0 }, { x: Number.NaN, y: 1 }), pen),
  ],
  [
    'a point of a stroke in layer mark of page 2',
    stroke('mark', pathOf({ x: 0, y: Number.NaN }, { x: 1, y: 1 }), pen),
  ],
  [
    'a stroke in layer cut of page 2: an arc of radius Inf',
    stroke('cut', arcPath(0, 0, Number.POSITIVE_INFINITY, 0, 1), pen),
  ],
  ['a stroke in layer cut of page 2', stroke('cut', arcPath(0, 0, 5, 0, Number.NaN), pen)],
  ['pen width of a stroke', stroke('cut', pathOf({ x: 0, y: 0 }, { x: 1, y: 1 }), { width: Number.NaN })],
  ['pen width of a stroke', stroke('cut', pathOf({ x: 0, y: 0 }, { x: 1, y: 1 }), { width: 0 })],
  ['dash of a stroke', stroke('cut', pathOf({ x: 0, y: 0 }, { x: 1, y: 1 }), { width: 1, dash: [1, 0] })],
  ['grey of a stroke', stroke('cut', pathOf({ x: 0, y: 0 }, { x: 1, y: 1 }), { width: 1, grey: 1.5 })],
  ['place of a text in layer note of page 2', text('note', { x: Number.NaN, y: 0 }, 3, 'a')],
  ['size of a text in layer note of page 2', text('note', { x: 0, y: 0 }, 0, 'a')],
  [
    'a point of a fill in layer note',
    { kind: 'fill', layer: 'note', path: pathOf({ x: Number.NaN, y: 0 }), grey: 0 },
  ],
  [
    'a point of a stroke in layer cut of page 2',
    group([Number.NaN, 0, 0, 1, 0, 0], [stroke('cut', pathOf({ x: 1, y: 1 }, { x: 2, y: 2 }), pen)]),
  ],
] as const)('%s: what cannot be drawn throws and is named', async (name, mark) => {
  const write = writePdf(document([page([]), page([mark])]), platform)
  await expect(write).rejects.toThrow(RangeError)
  await expect(write).rejects.toThrow(name)
})
