import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Box } from '../../../src/geometry/bounds.ts'
import { freePlace, occupancyOf, occupyBox, occupyPoints, takenIn } from '../../../src/page/room/occupancy.ts'

const [width, height] = [100, 70]
// off the squares' edges, so that a slow count needs no rule for touching
const value = fc.integer({ min: -40, max: 130 }).map((v) => v + 0.37)
const anyBox = fc.tuple(value, value, value, value).map(
  ([a, b, c, d]): Box => ({
    x0: Math.min(a, b),
    x1: Math.max(a, b) + 0.01,
    y0: Math.min(c, d),
    y1: Math.max(c, d) + 0.01,
  }),
)

/** Squares of 3 mm that two boxes both touch, one square after the other. */
const slowTaken = (boxes: readonly Box[], look: Box): number => {
  let count = 0
  for (let x = 0; x < width; x += 3)
    for (let y = 0; y < height; y += 3) {
      const meets = (b: Box): boolean => b.x0 < x + 3 && b.x1 > x && b.y0 < y + 3 && b.y1 > y
      if (meets(look) && boxes.some(meets)) count++
    }
  return count
}

const mapOf = (boxes: readonly Box[]) => {
  const map = occupancyOf(width, height, 3)
  for (const box of boxes) occupyBox(map, box)
  return map
}

describe('occupancy', () => {
  it('counts the squares that something lies on, as a count one by one does', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 6 }), anyBox, (boxes, look) => {
        expect(takenIn(mapOf(boxes), look)).toBe(slowTaken(boxes, look))
      }),
      { numRuns: 400, seed: 21 },
    )
  })

  it('takes a square round each point', () => {
    const points = [
      { x: 10.2, y: 20.3 },
      { x: 91.9, y: 5.1 },
    ]
    const map = occupancyOf(width, height, 3)
    occupyPoints(map, points, 4)
    const boxes = points.map(({ x, y }) => ({ x0: x - 4, x1: x + 4, y0: y - 4, y1: y + 4 }))
    const all = { x0: 0.1, y0: 0.1, x1: width - 0.1, y1: height - 0.1 }
    expect(takenIn(map, all)).toBe(slowTaken(boxes, all))
  })
})

describe('freePlace', () => {
  const within: Box = { x0: 2, y0: 2, x1: 98, y1: 68 }
  const places = (w: number, h: number): readonly Box[] => {
    const found: Box[] = []
    for (let y = within.y0; y + h <= within.y1; y += 4)
      for (let x = within.x0; x + w <= within.x1; x += 4) found.push({ x0: x, y0: y, x1: x + w, y1: y + h })
    return found
  }

  it('finds the place that covers least, and says how much', () => {
    fc.assert(
      fc.property(
        fc.array(anyBox, { maxLength: 8 }),
        fc.integer({ min: 5, max: 90 }).map((v) => v + 0.5),
        fc.integer({ min: 5, max: 60 }).map((v) => v + 0.5),
        (boxes, w, h) => {
          const map = mapOf(boxes)
          const found = freePlace(map, w, h, within)!
          const least = Math.min(...places(w, h).map((place) => takenIn(map, place)))
          expect(found.covered).toBe(least)
          const own = { x0: found.at.x, y0: found.at.y, x1: found.at.x + w, y1: found.at.y + h }
          expect(takenIn(map, own)).toBe(least)
          expect(own.x0).toBeGreaterThanOrEqual(within.x0)
          expect(own.y0).toBeGreaterThanOrEqual(within.y0)
          expect(own.x1).toBeLessThanOrEqual(within.x1)
          expect(own.y1).toBeLessThanOrEqual(within.y1)
        },
      ),
      { numRuns: 200, seed: 22 },
    )
  })

  it('keeps away from what is there where it can', () => {
    // a wall down the middle: the widest border is at either side, not along the wall
    const map = mapOf([{ x0: 46, x1: 54, y0: 0, y1: 70 }])
    const { at, covered } = freePlace(map, 12.5, 12.5, within)!
    expect(covered).toBe(0)
    expect(at.x + 12.5 < 46 - 12 || at.x > 54 + 12).toBe(true)
  })

  it('is null where the block is larger than the room', () => {
    expect(freePlace(mapOf([]), 97, 10, within)).toBeNull()
    expect(freePlace(mapOf([]), 10, 67, within)).toBeNull()
  })
})
