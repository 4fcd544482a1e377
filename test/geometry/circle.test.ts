import { Bezier } from 'bezier-js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { segmentAt, segmentDirection } from '../../src/geometry/at.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { pathLength, segmentLength } from '../../src/geometry/length.ts'
import { arcSegment, circle, pathOf, pathSegments, segmentsPath } from '../../src/geometry/path.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'
import { anyCubic, anySegment, sideOutline } from '../support/paths.ts'

const origin = { x: 0, y: 0 }
const degree = Math.PI / 180
/** A segment of a circle with its chord level: the arc stands symmetrically about the y axis. */
const level = (radius: number, sweep: number) => arcSegment(origin, radius, Math.PI / 2 - sweep / 2, sweep)
const measured = (radius: number, sweep: number) => {
  const arc = level(radius, sweep)
  const box = pathBounds(segmentsPath([arc]))
  return { arc: segmentLength(arc), chord: pointDistance(arc.from, arc.to), rise: box.y1 - box.y0 }
}

describe("segments of circles, Machinery's Handbook 31st ed.", () => {
  test('p. 79: radius 60, chord 59.8665 has a rise of 8', () => {
    assertNear(measured(60, 2 * Math.asin(59.8665 / 120)).rise, 8, 1e-4)
  })

  test('p. 79: chord 16 on radius 8 1/3 has a rise of 6', () => {
    assertNear(measured(25 / 3, 2 * Math.asin(8 / (25 / 3))).rise, 6, 1e-9)
  })

  test('p. 50: radius 12 through 67.11462 degrees: chord 13.26650, rise 2, arc 14.05645', () => {
    const { arc, chord, rise } = measured(12, 67.11462 * degree)
    assertNear(chord, 13.2665, 5e-6)
    assertNear(rise, 2, 5e-6)
    assertNear(arc, 14.05645, 5e-6)
  })

  test('p. 78: radius 35 through 60 degrees is an arc of 36.6519', () => {
    assertNear(measured(35, 60 * degree).arc, 36.6519, 5e-5)
  })

  // chord 2 sin(a/2), rise 1 - cos(a/2) of the unit circle, to 8 figures
  test.each([
    [30, 0.52359878, 0.034074174, 0.51763809],
    [60, 1.0471976, 0.1339746, 1],
    [90, 1.5707963, 0.29289322, Math.SQRT2],
  ])('unit circle, %d degrees: arc %d, rise %d, chord %d', (angle, arc, rise, chord) => {
    const got = measured(1, angle * degree)
    assertNear(got.arc, arc, 5e-8)
    assertNear(got.rise, rise, 5e-8)
    assertNear(got.chord, chord, 5e-8)
  })
})

test('ten unit steps measure 10', () => {
  const steps = Array.from({ length: 10 }, (_, i) => ({ x: i + 1, y: 0 }))
  expect(pathLength(pathOf(origin, ...steps))).toBe(10)
})

test('a circle is 2πr long', () => {
  assertNear(pathLength(circle({ x: 3, y: 4 }, 100)), 200 * Math.PI, 1e-9)
})

test('a closed path measures its closing line, an open one does not', () => {
  const corner = pathOf(origin, { x: 3, y: 0 }, { x: 3, y: 4 })
  expect(pathLength(corner)).toBe(7)
  expect(pathLength({ ...corner, closed: true })).toBe(12)
  expect(pathSegments(sideOutline)).toHaveLength(sideOutline.pieces.length)
})

test('segmentsPath gives the segments back', () => {
  const segments = pathSegments(sideOutline)
  expect(pathSegments(segmentsPath(segments))).toEqual(segments)
  expect(() => segmentsPath([])).toThrow(RangeError)
})

test('the length of a cubic is that of bezier-js', () => {
  fc.assert(
    fc.property(anyCubic, (cubic) => {
      if (cubic.kind !== 'cubic') return
      // a cubic that nearly turns back on itself is where quadratures differ: let the tape measure it in 64 parts
      const tape = new Bezier(cubic.from, cubic.c1, cubic.c2, cubic.to)
      let length = 0
      for (let i = 0; i < 64; i++) length += tape.split(i / 64, (i + 1) / 64).length()
      assertNear(segmentLength(cubic), length, 1e-3 * Math.max(1, length), 'length')
    }),
  )
})

test('on a cubic close to an arc the length is exact to 1e-9', () => {
  const cubic = {
    kind: 'cubic',
    from: origin,
    c1: { x: 400, y: 10 },
    c2: { x: 750, y: 150 },
    to: { x: 1000, y: 420 },
  } as const
  assertNear(segmentLength(cubic), new Bezier(cubic.from, cubic.c1, cubic.c2, cubic.to).length(), 1e-9)
})

test('a segment runs from its start to its end in its direction (central differences)', () => {
  fc.assert(
    fc.property(anySegment, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (segment, t) => {
      expect(segmentAt(segment, 0)).toEqual(segment.from)
      expect(segmentAt(segment, 1)).toEqual(segment.to)
      const h = 1e-5
      const [a, b] = [segmentAt(segment, t - h), segmentAt(segment, t + h)]
      const step = pointDistance(a, b)
      // a cusp has no direction
      fc.pre(step > 1e-4)
      const direction = segmentDirection(segment, t)
      assertNear(Math.cos(direction), (b.x - a.x) / step, 1e-3, 'cosine')
      assertNear(Math.sin(direction), (b.y - a.y) / step, 1e-3, 'sine')
    }),
  )
})
