import fc from 'fast-check'
import { expect, test } from 'vitest'
import { segmentAt } from '../../../src/geometry/at.ts'
import { arcSegment, type Segment } from '../../../src/geometry/path.ts'
import { bounded, linesNear } from '../../../src/page/room/line-stretches.ts'
import { hold } from '../../support/hold.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const at = fc.record({ x: real(-300, 300), y: real(-300, 300) })
const segment: fc.Arbitrary<Segment> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), from: at, to: at }),
  fc.record({ kind: fc.constant('cubic' as const), from: at, c1: at, c2: at, to: at }),
  fc
    .tuple(at, real(1, 900), real(-4, 4), real(-6, 6))
    .map(([c, r, from, sweep]) => arcSegment(c, r, from, sweep)),
)

test('what of a segment lies near a straight line lies in its stretches along that', () => {
  let near = 0
  fc.assert(
    fc.property(segment, at, real(-4, 4), real(20, 400), real(1, 12), (one, a, angle, length, reach) => {
      const [ax, ay] = [Math.cos(angle), Math.sin(angle)]
      const line = [a, { x: a.x + length * ax, y: a.y + length * ay }] as const
      const stretches = linesNear([bounded(one)], line, reach)
      // the slow way: points all along the segment, a hair inside of the reach
      for (let i = 0; i <= 300; i++) {
        const p = segmentAt(one, i / 300)
        const along = (p.x - a.x) * ax + (p.y - a.y) * ay
        const beside = (p.y - a.y) * ax - (p.x - a.x) * ay
        const beyond = Math.max(0, -along, along - length)
        if (Math.hypot(beyond, beside) > reach - 1e-6) continue
        near++
        hold(
          stretches.some(({ low, high }) => along >= low - 1e-6 && along <= high + 1e-6),
          `a ${one.kind} is ${beside} mm off at ${along}`,
        )
      }
    }),
    { numRuns: 700 },
  )
  expect(near).toBeGreaterThan(500)
})
