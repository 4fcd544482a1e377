import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packings } from '../../../src/page/parts/pack.ts'
import { atLeast, atMost, below, hold } from '../../support/hold.ts'

/** The first of the tries that takes the fewest pages. */
const packRectangles = (...of: Parameters<typeof packings>) =>
  packings(...of).reduce((a, b) => (b.length < a.length ? b : a))

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const page = { width: 190, height: 271 }
const gap = 4

const rectangle = ({ x0, y0, x1, y1 }: { x0: number; y0: number; x1: number; y1: number }) =>
  new Flatten.Polygon([
    new Flatten.Point(x0, y0),
    new Flatten.Point(x1, y0),
    new Flatten.Point(x1, y1),
    new Flatten.Point(x0, y1),
  ])

describe('rectangles on pages', () => {
  it('lie inside, each once at its size, none nearer to another than the gap, on no fewer pages than their area asks', () => {
    let compared = 0
    fc.assert(
      fc.property(
        fc.array(fc.record({ width: real(15, 185), height: real(12, 185) }), { minLength: 1, maxLength: 24 }),
        fc.nat(3),
        (sizes, leading) => {
          const pages = packRectangles(sizes, page, gap, leading)
          expect(pages.flatMap((placed) => placed.map(({ index }) => index)).sort((a, b) => a - b)).toEqual(
            sizes.map((_, i) => i),
          )
          for (const placed of pages) {
            for (const { index, turned, box } of placed) {
              const { width, height } = sizes[index]!
              const [wide, high] = turned ? [height, width] : [width, height]
              below(Math.abs(box.x1 - box.x0 - wide), 1e-9)
              below(Math.abs(box.y1 - box.y0 - high), 1e-9)
              atLeast(Math.min(box.x0, box.y0), 0)
              atMost(box.x1, page.width + 1e-9)
              atMost(box.y1, page.height + 1e-9)
            }
            const polygons = placed.map(({ box }) => rectangle(box))
            polygons.forEach((one, i) => {
              for (const other of polygons.slice(i + 1)) {
                compared++
                atLeast(one.distanceTo(other)[0], gap - 1e-9)
                hold(!(one.contains(other.vertices[0]!) || other.contains(one.vertices[0]!)))
              }
            })
          }
          const area = sizes.reduce((sum, s) => sum + (s.width + gap) * (s.height + gap), 0)
          atLeast(pages.length, Math.ceil(area / ((page.width + gap) * (page.height + gap)) - 1e-9))
          expect(packRectangles(sizes, page, gap, leading)).toEqual(pages)
        },
      ),
      { numRuns: 120, seed: 11, endOnFailure: true },
    )
    expect(compared).toBeGreaterThan(1000)
  })

  // by hand: what fits exactly, the gap between two included
  it.each([
    ['two halves', [page.width, (page.height - gap) / 2], 2, 1],
    ['two halves, turned', [(page.height - gap) / 2, page.width], 2, 1],
    ['two hardly more than halves', [page.width, (page.height - gap) / 2 + 0.01], 2, 2],
    ['quarters', [(page.width - gap) / 2, (page.height - gap) / 2], 8, 2],
    ['a page each', [page.width, page.height], 3, 3],
  ] as const)('%s', (_, [width, height], count, pages) => {
    const sizes = Array.from({ length: count }, () => ({ width, height }))
    expect(packRectangles(sizes, page, gap).length).toBe(pages)
  })

  it('those that lead lie on the first page where that takes no more', () => {
    const strip = { width: 260, height: 20 }
    const lead = { width: 100, height: 90 }
    const pages = packRectangles([lead, ...Array.from({ length: 9 }, () => strip)], page, gap, 1)
    expect(pages[0]!.some(({ index }) => index === 0)).toBe(true)
  })

  it('one that fits no page is refused', () => {
    expect(() => packRectangles([{ width: 272, height: 191 }], page, gap)).toThrow(RangeError)
    expect(packRectangles([{ width: 271, height: 190 }], page, gap)[0]![0]!.turned).toBe(true)
  })
})
