import { expect, test } from 'vitest'
import type { Convex } from '../../src/geometry/clip.ts'
import { convexApart, convexOverlap } from '../../src/geometry/overlap.ts'
import { assertNear } from '../support/near.ts'

const square = (x: number, y: number, half: number, angle: number): Convex =>
  [0, 1, 2, 3].map((i) => ({
    x: x + half * Math.SQRT2 * Math.cos(angle + (i + 0.5) * (Math.PI / 2)),
    y: y + half * Math.SQRT2 * Math.sin(angle + (i + 0.5) * (Math.PI / 2)),
  }))

test('two level squares overlap by what their sides say, and lie apart by it', () => {
  // sides of 20: middles 15 apart across, 3 up
  assertNear(convexOverlap(square(0, 0, 10, 0), square(15, 3, 10, 0)), 5, 1e-9)
  assertNear(convexOverlap(square(0, 0, 10, 0), square(27, 3, 10, 0)), -7, 1e-9)
})

test('whether two turned squares lie apart by so much is what their overlap says', () => {
  let apart = 0
  let wrong = 0
  for (let i = 0; i < 3000; i++) {
    // a spread without chance: multiples of irrational steps
    const [a, b] = [
      square(0, 0, 10, i * 0.77),
      square(((i * 1.618) % 60) - 30, ((i * 2.236) % 60) - 30, 5 + (i % 7), i * 1.3),
    ]
    for (const most of [-4, -1e-6, 0, 3]) {
      const said = convexApart(a, b, most)
      if (said) apart++
      if (said !== convexOverlap(a, b) <= most) wrong++
    }
  }
  expect(wrong).toBe(0)
  expect(apart).toBeGreaterThan(3000)
  expect(apart).toBeLessThan(11000)
})
