import fc from 'fast-check'
import { expect, test } from 'vitest'
import { segmentAt } from '../../src/geometry/at.ts'
import {
  type Box,
  boxGrow,
  boxOverlaps,
  boxUnion,
  pathBounds,
  pointsBounds,
} from '../../src/geometry/bounds.ts'
import { arcSegment, circle, type Segment, segmentsPath } from '../../src/geometry/path.ts'
import { assertNear } from '../support/near.ts'
import { anySegment } from '../support/paths.ts'

const degree = Math.PI / 180
const corners = ['x0', 'y0', 'x1', 'y1'] as const
const assertBox = (box: Box, expected: readonly number[], mm: number): void => {
  corners.forEach((corner, i) => {
    assertNear(box[corner], expected[i]!, mm, corner)
  })
}
const boundsOf = (...segments: Segment[]): Box => pathBounds(segmentsPath(segments))

test.each([0, 90, 180, 270, -90, 360, 720])(
  'an arc of 90 degrees about the direction of %d degrees reaches the full radius there only',
  (middle) => {
    const half = Math.SQRT1_2 * 10
    for (const [start, sweep] of [
      [middle - 45, 90],
      [middle + 45, -90],
    ] as const) {
      const box = boundsOf(arcSegment({ x: 0, y: 0 }, 10, start * degree, sweep * degree))
      // cos 45° bounds the other three sides
      const wanted = {
        0: [half, -half, 10, half],
        90: [-half, half, half, 10],
        180: [-10, -half, -half, half],
        270: [-half, -10, half, -half],
      }[((middle % 360) + 360) % 360]!
      assertBox(box, wanted, 1e-12)
    }
  },
)

test.each([0, 90, 180, 270])('a quarter that starts at %d degrees is bounded by its ends', (start) => {
  const arc = arcSegment({ x: 1, y: 2 }, 10, start * degree, 90 * degree)
  const xs = [arc.from.x, arc.to.x].sort((a, b) => a - b)
  const ys = [arc.from.y, arc.to.y].sort((a, b) => a - b)
  assertBox(boundsOf(arc), [xs[0]!, ys[0]!, xs[1]!, ys[1]!], 1e-12)
})

test('a circle is bounded by its radius', () => {
  assertBox(pathBounds(circle({ x: 5, y: -7 }, 3)), [2, -10, 8, -4], 1e-12)
})

test('an arc of no sweep is bounded by its point, on an axis too', () => {
  for (const start of [0, 1, Math.PI / 2])
    assertBox(
      boundsOf(arcSegment({ x: 0, y: 0 }, 2, start, 0)),
      [2 * Math.cos(start), 2 * Math.sin(start), 2 * Math.cos(start), 2 * Math.sin(start)],
      1e-12,
    )
})

test('the box of any segment holds all of its points and none to spare', () => {
  fc.assert(
    fc.property(anySegment, (segment) => {
      const box = boundsOf(segment)
      const samples = pointsBounds(Array.from({ length: 4001 }, (_, i) => segmentAt(segment, i / 4000)))
      for (const corner of corners) {
        const outward = corner.endsWith('0') ? -1 : 1
        const spare = (box[corner] - samples[corner]) * outward
        // no sample outside; an extreme between two samples is missed by at most the sagitta of their step
        expect(spare).toBeGreaterThanOrEqual(-1e-9)
        expect(spare).toBeLessThan(segment.kind === 'line' ? 1e-9 : 3e-3)
      }
    }),
  )
})

test('cubics with an all but vanishing leading term keep their extreme', () => {
  const y = fc.double({ min: -500, max: 500, noNaN: true })
  const exponent = fc.integer({ min: 6, max: 15 })
  fc.assert(
    fc.property(y, y, y, exponent, (y0, y1, y2, power) => {
      // y3 makes the factor of t³ about 10^-power
      const y3 = 3 * (y2 - y1) + y0 + 10 ** -power
      const cubic: Segment = {
        kind: 'cubic',
        from: { x: 0, y: y0 },
        c1: { x: 10, y: y1 },
        c2: { x: 20, y: y2 },
        to: { x: 30, y: y3 },
      }
      const box = boundsOf(cubic)
      const samples = pointsBounds(Array.from({ length: 2001 }, (_, i) => segmentAt(cubic, i / 2000)))
      assertNear(box.y1, samples.y1, 2e-3, 'top')
      assertNear(box.y0, samples.y0, 2e-3, 'bottom')
    }),
    { numRuns: 500 },
  )
})

test('boxes join, grow and overlap', () => {
  const a: Box = { x0: 0, y0: 0, x1: 10, y1: 10 }
  const b: Box = { x0: 10, y0: -5, x1: 20, y1: 5 }
  expect(boxUnion(a, b)).toEqual({ x0: 0, y0: -5, x1: 20, y1: 10 })
  expect(boxOverlaps(a, b)).toBe(false)
  expect(boxOverlaps(boxGrow(a, 0.1), b)).toBe(true)
  expect(boxGrow(a, 1)).toEqual({ x0: -1, y0: -1, x1: 11, y1: 11 })
  expect(() => pointsBounds([])).toThrow(RangeError)
})
