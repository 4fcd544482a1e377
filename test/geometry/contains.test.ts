import fc from 'fast-check'
import { expect, test } from 'vitest'
import { polygonContains, polygonInside } from '../../src/geometry/contains.ts'

test('a point lies within a polygon where the rings between its corners say so, asked once or often', () => {
  const seen = { inside: 0, outside: 0, beyond: 0 }
  const share = fc.double({ min: -1.2, max: 1.2, noNaN: true })
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 90 }),
      share,
      share,
      fc.double({ min: 0, max: 6, noNaN: true }),
      (corners, x, y, turn) => {
        const ring = Array.from({ length: corners }, (_, i) => {
          const angle = turn + (i * 2 * Math.PI) / corners
          return { x: 100 * Math.cos(angle), y: 100 * Math.sin(angle) }
        })
        const p = { x: 100 * x, y: 100 * y }
        const away = Math.hypot(p.x, p.y)
        // between the circles that touch its sides and its corners neither is known
        if (away > 100 * Math.cos(Math.PI / corners) - 1e-9 && away < 100 + 1e-9) return
        expect(polygonContains(ring, p)).toBe(away < 100)
        expect(polygonInside(ring)(p)).toBe(away < 100)
        if (away < 100) seen.inside++
        else seen.outside++
        if (Math.abs(p.y) > 100) seen.beyond++
      },
    ),
    { numRuns: 600 },
  )
  expect(Math.min(seen.inside, seen.outside, seen.beyond), JSON.stringify(seen)).toBeGreaterThan(50)
})
