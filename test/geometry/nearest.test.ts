import { Bezier } from 'bezier-js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { segmentAt } from '../../src/geometry/at.ts'
import { segmentDistance, segmentsGap } from '../../src/geometry/nearest.ts'
import { arcSegment, type Segment } from '../../src/geometry/path.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const at = (x0: number, x1: number) => fc.record({ x: real(x0, x1), y: real(-100, 100) })
const line = (x0: number, x1: number): fc.Arbitrary<Segment> =>
  fc.record({ kind: fc.constant('line' as const), from: at(x0, x1), to: at(x0, x1) })
/** one that keeps to its half of the plane */
const arc = (x0: number, x1: number): fc.Arbitrary<Segment> =>
  fc
    .record({
      r: real(1, (x1 - x0) / 2),
      x: real(0, 1),
      y: real(-100, 100),
      from: real(-4, 4),
      sweep: real(-6, 6),
    })
    .filter(({ sweep }) => Math.abs(sweep) > 0.01)
    .map(({ r, x, y, from, sweep }) => arcSegment({ x: x0 + r + x * (x1 - x0 - 2 * r), y }, r, from, sweep))

/** in its half of the plane, as its corners are */
const cubic = (x0: number, x1: number): fc.Arbitrary<Segment> =>
  fc.record({
    kind: fc.constant('cubic' as const),
    from: at(x0, x1),
    c1: at(x0, x1),
    c2: at(x0, x1),
    to: at(x0, x1),
  })

test('the nearest point of a cubic is that of bezier-js, or nearer', () => {
  fc.assert(
    fc.property(cubic(-200, 200), at(-300, 300), (segment, p) => {
      if (segment.kind !== 'cubic') return
      const { from, c1, c2, to } = segment
      const theirs = pointDistance(p, new Bezier(from, c1, c2, to).project(p))
      const mine = segmentDistance(segment, p)
      // theirs looks at hundredths of the parameter and at a tenth of those
      expect(mine).toBeLessThanOrEqual(theirs + 1e-6)
      expect(mine).toBeGreaterThan(theirs - 0.5)
    }),
    { numRuns: 400 },
  )
})

describe('the gap between two segments', () => {
  test.each([
    ['lines and arcs', fc.oneof(line(-200, -1), arc(-200, -1)), 400],
    ['cubics', cubic(-200, -1), 40],
  ])('of %s is the least of many points of one to the other', (_, first, numRuns) => {
    fc.assert(
      fc.property(first, fc.oneof(line(1, 200), arc(1, 200)), (a, b) => {
        const { from, to, distance } = segmentsGap(a, b)
        const steps = 400
        let sampled = Number.POSITIVE_INFINITY
        for (let i = 0; i <= steps; i++) {
          sampled = Math.min(sampled, segmentDistance(b, segmentAt(a, i / steps)))
          sampled = Math.min(sampled, segmentDistance(a, segmentAt(b, i / steps)))
        }
        expect(distance).toBeLessThanOrEqual(sampled + 1e-9)
        // an arc of 600 mm in 400 steps comes within 1 mm of its nearest point
        expect(distance).toBeGreaterThan(sampled - 1.5)
        assertNear(pointDistance(from, to), distance, 1e-9)
        assertNear(segmentDistance(a, from), 0, 1e-9)
        assertNear(segmentDistance(b, to), 0, 1e-9)
      }),
      { numRuns },
    )
  })
  test('of two circles is that of their middles less both radii', () => {
    const a = arcSegment({ x: 0, y: 0 }, 3, -1, 2)
    const b = arcSegment({ x: 10, y: 0 }, 4, 2, 2)
    assertNear(segmentsGap(a, b).distance, 3, 1e-12)
    // seen from inside: 20 less 10 and 3
    assertNear(segmentsGap(a, arcSegment({ x: -10, y: 0 }, 20, -1, 2)).distance, 7, 1e-12)
  })
})
