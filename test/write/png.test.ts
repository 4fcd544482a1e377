import { PNG } from 'pngjs'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadGlyphs } from '../../src/cli/pictures/map-image.ts'
import { type Drawing, fill, group, stroke, text } from '../../src/drawing/drawing.ts'
import { textCorners } from '../../src/drawing/text-box.ts'
import { affineIdentity, affineRotate, affineThen, affineTranslate } from '../../src/geometry/affine.ts'
import { pointsBounds } from '../../src/geometry/bounds.ts'
import {
  arcSegment,
  circle,
  type Path,
  pathOf,
  polygonOf,
  rectangle,
  segmentsPath,
} from '../../src/geometry/path.ts'
import { writePng } from '../../src/write/png.ts'
import { type RasterImage, rasterise } from '../../src/write/raster/raster.ts'
import type { GlyphSource } from '../../src/write/raster/raster-text.ts'
import { assertNear } from '../support/near.ts'

const none: GlyphSource = () => {
  throw new Error('no letters here')
}
let glyphOf: GlyphSource
beforeAll(async () => {
  glyphOf = await loadGlyphs()
})

const pixelsPerMm = 5
const draw = (drawing: Drawing, glyphs = none): RasterImage =>
  rasterise(drawing, { width: 60, height: 40, pixelsPerMm }, glyphs)

/** Blackened area, mm². */
const inked = ({ pixels }: RasterImage): number =>
  pixels.reduce((sum, v) => sum + (255 - v) / 255, 0) / pixelsPerMm ** 2

/** Grey at a place in mm, y up. */
const greyAt = ({ width, height, pixels }: RasterImage, x: number, y: number): number =>
  pixels[(height - 1 - Math.floor(y * pixelsPerMm)) * width + Math.floor(x * pixelsPerMm)]!

const turned = (angle: number) =>
  affineThen(affineThen(affineTranslate(-30, -20), affineRotate(angle)), affineTranslate(30, 20))

const angles = [0, Math.PI / 2, Math.PI, -Math.PI / 2, 0.3, 1.1, 2.6]

describe('an area is blackened to within 1 % of its size', () => {
  it.each(angles)('a rectangle turned by %f', (angle) => {
    const drawing = [group(turned(angle), [fill('note', rectangle(20.03, 12.07, 41.11, 27.9), 0)])]
    const area = (41.11 - 20.03) * (27.9 - 12.07)
    assertNear(inked(draw(drawing)), area, area * 0.002)
  })

  it.each([0.3, 1, 7.77, 18])('a disc of radius %f', (radius) => {
    const area = Math.PI * radius ** 2
    assertNear(inked(draw([fill('note', circle({ x: 30.123, y: 19.87 }, radius), 0)])), area, area * 0.01)
  })

  it.each(angles)('a line turned by %f, thin and thick', (angle) => {
    for (const width of [0.12, 0.25, 0.5, 3])
      for (const y of [20, 20.06, 20.13]) {
        const drawing = [group(turned(angle), [stroke('cut', pathOf({ x: 15, y }, { x: 45, y }), { width })])]
        assertNear(inked(draw(drawing)), 30 * width, 30 * width * 0.01, `width ${width} at ${y}`)
      }
  })

  it('an arc, drawn as long as it is', () => {
    for (const width of [0.25, 1]) {
      const path = segmentsPath([arcSegment({ x: 30, y: 5 }, 25, 0.4, 2)])
      assertNear(inked(draw([stroke('cut', path, { width })])), 50 * width, 50 * width * 0.01)
    }
  })

  it('a closed outline, with round joins: each corner adds the sector that the square ends leave open', () => {
    const drawing = [stroke('cut', rectangle(10, 10, 50, 30), { width: 4 })]
    // four bars with butt ends overlap in a quarter of a square of the width at each inner corner; joins add a quarter disc
    const area = 120 * 4 - 4 * 4 + Math.PI * 4
    assertNear(inked(draw(drawing)), area, area * 0.005)
  })

  it('a shape with a level edge in its middle, wherever that lies in a pixel', () => {
    for (const y of [20, 20.011, 20.05, 20.083, 20.137]) {
      // a strip 40 × 1 with a post 1 × 1 on it: the inner edges count for nearly all of the area
      const step = polygonOf(
        { x: 10, y: y - 1 },
        { x: 50, y: y - 1 },
        { x: 50, y },
        { x: 11, y },
        { x: 11, y: y + 1 },
        { x: 10, y: y + 1 },
      )
      assertNear(inked(draw([fill('note', step, 0)])), 41, 41 * 0.002, `level at ${y}`)
    }
  })

  it('a dashed line, as much of it as its dashes draw', () => {
    const drawn = (dash: readonly number[]): number =>
      inked(draw([stroke('mark', pathOf({ x: 5, y: 20 }, { x: 50, y: 20 }), { width: 1, dash })]))
    // 45 mm: dashes from 0, 4.5, 9 … of 3 mm each
    assertNear(drawn([3, 1.5]), 30, 0.2)
    // 8 1.5 1.5 1.5: three whole turns of 12.5 draw 28.5, the rest of 7.5 is drawn
    assertNear(drawn([8, 1.5, 1.5, 1.5]), 36, 0.2)
    // an odd pattern goes on as its own opposite: 5 on, 5 off
    assertNear(drawn([5]), 25, 0.2)
  })
})

describe('shapes', () => {
  it('that overlap in one path are filled once, and a hole that runs the other way stays open', () => {
    const ring: Path = {
      start: { x: 10, y: 5 },
      closed: true,
      pieces: [
        ...rectangle(10, 5, 40, 35).pieces,
        { kind: 'line', to: { x: 10, y: 5 } },
        { kind: 'line', to: { x: 15, y: 10 } },
        ...[
          { x: 15, y: 30 },
          { x: 35, y: 30 },
          { x: 35, y: 10 },
          { x: 15, y: 10 },
        ].map((to) => ({ kind: 'line' as const, to })),
        { kind: 'line', to: { x: 10, y: 5 } },
      ],
    }
    assertNear(inked(draw([fill('note', ring, 0)])), 900 - 400, 2)
    // a star of five points is whole by the non-zero rule: its pentagon too
    const star = polygonOf(
      ...([0, 2, 4, 1, 3].map((k) => ({
        x: 30 + 15 * Math.sin((k * 2 * Math.PI) / 5),
        y: 20 + 15 * Math.cos((k * 2 * Math.PI) / 5),
      })) as [{ x: number; y: number }, ...{ x: number; y: number }[]]),
    )
    expect(greyAt(draw([fill('note', star, 0)]), 30, 20)).toBe(0)
  })

  it('stand where they are drawn: y up, edges half covered half grey', () => {
    const image = draw([fill('note', rectangle(10.1, 30, 20, 35), 0)])
    expect(image).toMatchObject({ width: 300, height: 200 })
    expect(greyAt(image, 15, 32)).toBe(0)
    expect(greyAt(image, 15, 29.9)).toBe(255)
    expect(greyAt(image, 15, 8)).toBe(255)
    // 10.1 mm is the middle of a pixel
    assertNear(greyAt(image, 10.1, 32), 127.5, 1)
  })

  it('keep their grey, and later layers lie over earlier ones', () => {
    const square = rectangle(10, 10, 20, 20)
    expect(greyAt(draw([fill('note', square, 0.4)]), 15, 15)).toBe(102)
    expect(
      greyAt(
        draw([stroke('note', pathOf({ x: 0, y: 15 }, { x: 30, y: 15 }), { width: 2, grey: 0.6 })]),
        9,
        15,
      ),
    ).toBe(153)
    // `cut` comes after `note` whatever the order of the marks
    expect(greyAt(draw([fill('cut', square, 0), fill('note', square, 1)]), 15, 15)).toBe(0)
    expect(greyAt(draw([fill('note', square, 0), fill('note', square, 1)]), 15, 15)).toBe(255)
  })

  it('beyond the edge of the picture are left out', () => {
    const image = draw([
      fill('note', rectangle(-50, -50, 30, 20), 0),
      fill('note', rectangle(55, 35, 500, 600), 0),
    ])
    assertNear(inked(image), 30 * 20 + 5 * 5, 1)
    assertNear(inked(draw([fill('note', rectangle(100, 100, 120, 120), 0)])), 0, 0)
  })

  it('that cannot be drawn are refused', () => {
    const bad = { x: Number.NaN, y: 3 }
    expect(() => draw([fill('note', polygonOf(bad, { x: 1, y: 1 }), 0)])).toThrow(RangeError)
    expect(() => draw([stroke('note', pathOf({ x: 1, y: 1 }, bad), { width: 1 })])).toThrow(RangeError)
    expect(() => draw([stroke('note', pathOf({ x: 1, y: 1 }, { x: 9, y: 1 }), { width: 0 })])).toThrow(
      /pen is 0/,
    )
    expect(() =>
      draw([stroke('note', pathOf({ x: 1, y: 1 }, { x: 9, y: 1 }), { width: 1, dash: [2, 0] })]),
    ).toThrow(/dash is 0/)
    expect(() => rasterise([], { width: 0, height: 4, pixelsPerMm }, none)).toThrow(RangeError)
    expect(() => rasterise([], { width: 1e5, height: 1e5, pixelsPerMm }, none)).toThrow(RangeError)
  })
})

describe('words', () => {
  /** Corners of what is not white, mm. */
  const inkBox = ({ width, height, pixels }: RasterImage) => {
    const points: { x: number; y: number }[] = []
    pixels.forEach((v, i) => {
      if (v < 200)
        points.push({ x: (i % width) / pixelsPerMm, y: (height - Math.floor(i / width)) / pixelsPerMm })
    })
    return pointsBounds(points)
  }

  it.each([
    ['left', 0],
    ['middle', 0],
    ['right', 0],
    ['middle', Math.PI / 2],
    ['left', -Math.PI / 2],
  ] as const)('stay in the box that the layout reckons with, %s, turned by %f', (align, angle) => {
    for (const words of ['WASTE', 'Lay page 17 over 4', '17 7/16+ in', 'MMMMWWWW', 'iiiiil'])
      for (const face of ['regular', 'bold'] as const) {
        const mark = text('note', { x: 30, y: 20 }, 2, words, { align, angle, face })
        const box = pointsBounds(textCorners(mark, affineIdentity))
        const ink = inkBox(draw([mark], glyphOf))
        // a letter's own outline may lean out of its advance by a hair, and a pixel is 0.2 mm
        const slack = 0.35
        expect(ink.x0).toBeGreaterThan(box.x0 - slack)
        expect(ink.y0).toBeGreaterThan(box.y0 - slack)
        expect(ink.x1).toBeLessThan(box.x1 + slack)
        expect(ink.y1).toBeLessThan(box.y1 + slack)
      }
  })

  it('have capitals as high as was said', () => {
    const ink = inkBox(
      rasterise([text('note', { x: 5, y: 10 }, 8, 'HEL')], { width: 60, height: 40, pixelsPerMm }, glyphOf),
    )
    assertNear(ink.y0, 10, 0.2 + 1e-9)
    assertNear(ink.y1, 18, 0.2 + 1e-9)
  })

  it('of any language are drawn; a letter that the font lacks is a box', () => {
    const area = (words: string): number => inked(draw([text('note', { x: 5, y: 10 }, 6, words)], glyphOf))
    for (const words of ['Łódź', 'Ράμπα', 'é', 'e\u0301']) expect(area(words)).toBeGreaterThan(1)
    assertNear(area('é'), area('e\u0301'), 1e-9)
    expect(area('\u{1F6F9}')).toBe(area('\u25a1'))
    expect(area('\u25a1')).toBeGreaterThan(0.5)
  })
})

describe('the file', () => {
  const drawing = (): Drawing => [
    fill('note', circle({ x: 20, y: 20 }, 9), 0.3),
    stroke('cut', pathOf({ x: 3, y: 4 }, { x: 55, y: 33 }), { width: 0.5, dash: [3, 1] }),
    text('note', { x: 5, y: 5 }, 4, 'Slipway 17 7/16'),
  ]
  const size = { width: 60, height: 40, pixelsPerMm }

  it('is what the codec makes of the pixels, and the same every time', () => {
    const encode = (image: RasterImage): Uint8Array => {
      const png = new PNG({ width: image.width, height: image.height })
      png.data = Buffer.from(image.pixels)
      return PNG.sync.write(png, { colorType: 0, inputColorType: 0, inputHasAlpha: false })
    }
    const bytes = writePng(drawing(), size, { glyphOf, encode })
    expect(Buffer.compare(bytes, writePng(drawing(), size, { glyphOf, encode }))).toBe(0)
    const read = PNG.sync.read(Buffer.from(bytes))
    const { pixels } = rasterise(drawing(), size, glyphOf)
    expect([read.width, read.height]).toEqual([300, 200])
    // pngjs gives red, green, blue, alpha
    expect([...pixels].every((v, i) => read.data[4 * i] === v && read.data[4 * i + 3] === 255)).toBe(true)
  })
})
