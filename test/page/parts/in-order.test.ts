import fc from 'fast-check'
import { expect, it } from 'vitest'
import { boxOverlaps } from '../../../src/geometry/bounds.ts'
import { inOrder, wrongPairs } from '../../../src/page/parts/in-order.ts'
import { packings } from '../../../src/page/parts/pack.ts'
import { below, hold } from '../../support/hold.ts'

const page = { width: 190, height: 271 }
const gap = 4

it('pieces come into their order without a page more, each at its size, none nearer than the gap', () => {
  const count = { before: 0, after: 0 }
  const size = fc.record({
    width: fc.constantFrom(183, 183, 183, 190, 120),
    height: fc.constant(20.2),
  })
  fc.assert(
    fc.property(
      fc.array(size, { minLength: 6, maxLength: 30 }),
      fc.integer({ min: 3, max: 6 }),
      (sizes, of) => {
        const lead = { width: 168, height: 158 }
        const all = [lead, ...sizes]
        const groups = [null, ...sizes.map((_, i) => Math.floor(i / of))]
        // the longest first, which mixes them up
        const packed = packings(all, page, gap, 1)[2]!
        const ordered = inOrder(packed, groups, page, gap)
        expect(ordered.length).toBe(packed.length)
        expect(ordered.map(({ length }) => length)).toEqual(packed.map(({ length }) => length))
        expect(
          ordered
            .flat()
            .map(({ index }) => index)
            .sort((a, b) => a - b),
        ).toEqual(all.map((_, i) => i))
        for (const placed of ordered)
          placed.forEach(({ index, turned, box }, i) => {
            const [wide, high] = turned
              ? [all[index]!.height, all[index]!.width]
              : [all[index]!.width, all[index]!.height]
            below(Math.abs(box.x1 - box.x0 - wide) + Math.abs(box.y1 - box.y0 - high), 1e-9)
            below(Math.max(-box.x0, -box.y0, box.x1 - page.width, box.y1 - page.height), 1e-6)
            const around = { x0: box.x0 - 3.999, y0: box.y0 - 3.999, x1: box.x1 + 3.999, y1: box.y1 + 3.999 }
            for (const other of placed.slice(i + 1)) hold(!boxOverlaps(around, other.box))
          })
        count.before += wrongPairs(packed, groups)
        count.after += wrongPairs(ordered, groups)
      },
    ),
    { numRuns: 150, seed: 4, endOnFailure: true },
  )
  expect(count.before).toBeGreaterThan(300)
  expect(count.after).toBeLessThan(count.before / 3)
})

it('pieces of one size are all in order', () => {
  const sizes = Array.from({ length: 20 }, () => ({ width: 185, height: 20 }))
  const shuffled = packings(sizes, page, gap)[0]!.map((placed) =>
    placed.map((one) => ({ ...one, index: (one.index * 7) % 20 })),
  )
  const groups = sizes.map(() => 0)
  expect(wrongPairs(shuffled, groups)).toBeGreaterThan(20)
  expect(wrongPairs(inOrder(shuffled, groups, page, gap), groups)).toBe(0)
})
