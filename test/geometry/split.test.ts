import fc from 'fast-check'
import { expect, test } from 'vitest'
import { segmentAt } from '../../src/geometry/at.ts'
import { segmentLength } from '../../src/geometry/length.ts'
import { pathDistance, segmentDistance } from '../../src/geometry/nearest.ts'
import { arcSegment, segmentsPath } from '../../src/geometry/path.ts'
import { pointDistance } from '../../src/geometry/point.ts'
import { segmentPart } from '../../src/geometry/split.ts'
import { assertNear } from '../support/near.ts'
import { anyArc, anyLine, anyPoint, anySegment } from '../support/paths.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })

test('a part of a segment runs through the same points', () => {
  fc.assert(
    fc.property(anySegment, share, share, share, (segment, a, b, t) => {
      const [t0, t1] = [Math.min(a, b), Math.max(a, b)]
      const part = segmentPart(segment, t0, t1)
      expect(part.kind).toBe(segment.kind)
      const [p, q] = [segmentAt(part, t), segmentAt(segment, t0 + (t1 - t0) * t)]
      assertNear(pointDistance(p, q), 0, 1e-8)
    }),
  )
})

test('the parts of a segment join where they were split and measure the whole', () => {
  fc.assert(
    fc.property(anySegment, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (segment, t) => {
      const [head, tail] = [segmentPart(segment, 0, t), segmentPart(segment, t, 1)]
      expect([head.from, head.to, tail.to]).toEqual([segment.from, tail.from, segment.to])
      const whole = segmentLength(segment)
      // a cubic's length is summed: where it all but turns back on itself the sum is good to 1e-3 of it
      const slack = segment.kind === 'cubic' ? 1e-3 * whole + 1e-9 : 1e-9 * (1 + whole)
      assertNear(segmentLength(head) + segmentLength(tail), whole, slack)
    }),
  )
})

test('the distance from a line or an arc is the least over its points', () => {
  fc.assert(
    fc.property(fc.oneof(anyLine, anyArc), anyPoint, (segment, p) => {
      const steps = 2000
      let least = Number.POSITIVE_INFINITY
      for (let i = 0; i <= steps; i++)
        least = Math.min(least, pointDistance(p, segmentAt(segment, i / steps)))
      const distance = segmentDistance(segment, p)
      // the nearest point lies at most half a step from a sample
      expect(distance).toBeLessThanOrEqual(least + 1e-9)
      expect(distance).toBeGreaterThanOrEqual(least - segmentLength(segment) / steps)
      assertNear(pathDistance(segmentsPath([segment]), p), distance, 1e-9)
    }),
    { numRuns: 60 },
  )
})

test('distances in closed form: off the middle, off an end, from the centre, from a point', () => {
  const line = { kind: 'line', from: { x: 0, y: 0 }, to: { x: 10, y: 0 } } as const
  expect([
    segmentDistance(line, { x: 4, y: -3 }),
    segmentDistance(line, { x: 13, y: 4 }),
    segmentDistance({ ...line, to: line.from }, { x: 3, y: 4 }),
  ]).toEqual([3, 5, 5])
  for (const sweep of [Math.PI / 2, -Math.PI / 2]) {
    const arc = arcSegment({ x: 0, y: 0 }, 10, 0, sweep)
    assertNear(segmentDistance(arc, { x: 3, y: 4 * Math.sign(sweep) }), 5, 1e-12)
    assertNear(segmentDistance(arc, { x: 0, y: 0 }), 10, 1e-12)
    // beside the arc's start, on the far side: the start itself is nearest
    assertNear(segmentDistance(arc, { x: 13, y: -4 * Math.sign(sweep) }), 5, 1e-12)
  }
})

test('a cubic that runs straight is as far off as its line', () => {
  const [from, to] = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
  ]
  const cubic = { kind: 'cubic', from, c1: from, c2: to, to } as const
  assertNear(segmentDistance(cubic, { x: 4, y: -3 }), 3, 1e-9)
  assertNear(segmentDistance(cubic, { x: 13, y: 4 }), 5, 1e-9)
})
