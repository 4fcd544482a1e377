import { expect, test } from 'vitest'
import { type Drawing, group, shared, stroke } from '../../src/drawing/drawing.ts'
import { type Affine, affineRotate, affineThen, affineTranslate } from '../../src/geometry/affine.ts'
import { type Path, pathOf, polygonOf } from '../../src/geometry/path.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { platform } from '../support/platform.ts'
import { type PdfRead, readPdf } from '../support/read-pdf.ts'
import { opened } from '../support/strokes.ts'

const point = 72 / 25.4
const pen = { width: 0.3, dash: [2, 1] }

const comb = [
  ...Array.from({ length: 6 }, (_, i) =>
    stroke('note', pathOf({ x: 2 * i, y: 0 }, { x: 2 * i, y: 3 + i }), pen),
  ),
  stroke('note', polygonOf({ x: 1, y: -4 }, { x: 9, y: -4 }, { x: 9, y: -1.5 }), { width: 1.2, grey: 0.5 }),
]
const line = stroke('note', pathOf({ x: 5, y: 5 }, { x: 60, y: 5 }), { width: 0.7 })

const print = async (drawings: readonly Drawing[]): Promise<PdfRead & { readonly bytes: Uint8Array }> => {
  const pages = drawings.map((drawing, i) => ({
    width: 210,
    height: 297,
    draw: () => drawing,
    label: `${i + 1}`,
    bookmark: `${i + 1}`,
  }))
  const { bytes } = await writePdf({ title: 'Combs', subject: '', attachments: [], pages }, platform)
  return { ...(await readPdf(bytes)), bytes }
}

const formCount = (bytes: Uint8Array): number =>
  Buffer.from(bytes).toString('latin1').split('/Subtype /Form').length - 1

const place = (turn: number, x: number, y: number): Affine =>
  affineThen(affineRotate(turn), affineTranslate(x, y))

test('what is shared is drawn where its group stands, as its marks alone would be', async () => {
  const skewed: Affine = [1.0043, 0.0021, -0.0037, 0.9962, 0.4, -0.7]
  const places = [
    place(0, 20, 40),
    place(0.3, 100, 90),
    place(Math.PI / 2, 33.3, 150),
    [0, 1, 1, 0, 50, 200] as Affine,
  ]
  const kept: Drawing = [group(skewed, [line, ...places.map((at) => shared(at, 'note', comb)), line])]
  const plain: Drawing = [group(skewed, [line, ...places.map((at) => group(at, comb)), line])]
  const [a, b] = [await print([kept]), await print([plain])]
  const [mine, other] = [a.pages[0]!.strokes, b.pages[0]!.strokes]
  expect(mine).toHaveLength(2 + places.length * comb.length)
  mine.forEach((one, i) => {
    const { path, width, dash, grey, layer } = other[i]!
    expect([one.width, one.dash, one.grey, one.layer]).toEqual([width, dash, grey, layer])
    one.path.forEach((piece, k) => {
      const twin = path[k]!
      expect(piece.kind).toBe(twin.kind)
      if (piece.kind === 'close' || twin.kind === 'close') return
      // two numbers rounded to 1e-4 pt in place of one
      expect(Math.hypot(piece.to.x - twin.to.x, piece.to.y - twin.to.y) / point).toBeLessThan(1e-4)
    })
  })
  // the drawing itself, opened by other means
  const lines = opened(kept).lines
  expect(lines).toHaveLength(mine.length)
  mine.forEach(({ path }, i) => {
    const [first] = path
    const at = lines[i]!.points[0]!
    if (first?.kind !== 'move') throw new Error('no start')
    expect(Math.hypot(first.to.x / point - at.x, first.to.y / point - at.y)).toBeLessThan(1e-4)
  })
  expect(formCount(b.bytes)).toBe(0)
})

test('a document holds it once for each turn, whichever pages show it', async () => {
  const at = (x: number, y: number, turn: number) => shared(place(turn, x, y), 'note', comb)
  const { bytes, pages } = await print([
    [at(20, 20, 0), at(90, 20, 0), at(50, 80, Math.PI / 2)],
    [at(33, 20, 0), at(50, 90, Math.PI / 2)],
    [line],
  ])
  expect(pages.map(({ strokes }) => strokes.length)).toEqual([3 * comb.length, 2 * comb.length, 1])
  expect(formCount(bytes)).toBe(2)
})

test('its box cuts off nothing, pens and corners with them', async () => {
  const steep: Path = pathOf({ x: 0, y: 0 }, { x: 7, y: 19 })
  const thick = [stroke('cut', steep, { width: 3 })]
  const { pages } = await print([[shared(place(0.7, 60, 60), 'cut', thick)]])
  const [one] = pages[0]!.strokes
  expect(one!.layer).toBe('cut')
  const clip = one!.clip!
  for (const piece of one!.path) {
    if (piece.kind === 'close') continue
    expect(piece.to.x - one!.width / 2).toBeGreaterThanOrEqual(clip.x0)
    expect(piece.to.x + one!.width / 2).toBeLessThanOrEqual(clip.x1)
    expect(piece.to.y - one!.width / 2).toBeGreaterThanOrEqual(clip.y0)
    expect(piece.to.y + one!.width / 2).toBeLessThanOrEqual(clip.y1)
  }
})

test('lines that follow have their own pens', async () => {
  const { pages } = await print([[line, shared(place(0, 20, 20), 'note', comb), line]])
  const widths = pages[0]!.strokes.map(({ width }) => Math.round((width / point) * 1000) / 1000)
  expect(widths).toEqual([0.7, ...comb.map(({ kind, ...one }) => ('pen' in one ? one.pen.width : 0)), 0.7])
})
