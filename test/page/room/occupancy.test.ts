import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { affineApply, affineRotate, affineThen, affineTranslate } from '../../../src/geometry/affine.ts'
import { type Box, boxGrow } from '../../../src/geometry/bounds.ts'
import { boxCorners } from '../../../src/geometry/clip.ts'
import { arcSegment, pathOf, segmentsPath } from '../../../src/geometry/path.ts'
import { freePlace, leastPlace } from '../../../src/page/room/free-place.ts'
import {
  boxCounter,
  clearUnder,
  coarser,
  type Occupancy,
  occupancyOf,
  occupyBox,
  occupyUnder,
  takenUnder,
  weightIn,
} from '../../../src/page/room/occupancy.ts'
import { occupyPath } from '../../../src/page/room/occupy-path.ts'

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

const mapOf = (boxes: readonly Box[], kind = 1) => {
  const map = occupancyOf(width, height, 3)
  for (const box of boxes) occupyBox(map, box, kind)
  return map
}

const takenIn = (map: Occupancy, box: Box, kinds = 1): number => takenUnder(map, boxCorners(box), kinds)

/** Squares with something in them, by the middle of each. */
const takenSquares = ({ step, stride, taken }: Occupancy) =>
  [...taken].flatMap((kinds, i) =>
    kinds === 0 ? [] : [{ x: ((i % stride) + 0.5) * step, y: (Math.floor(i / stride) + 0.5) * step, kinds }],
  )

/** Whether the square that holds a point is taken; points out of the window are in none. */
const isTaken = ({ columns, rows, step, stride, taken }: Occupancy, x: number, y: number): boolean => {
  const [c, r] = [Math.floor(x / step), Math.floor(y / step)]
  return c < 0 || r < 0 || c >= columns || r >= rows || taken[r * stride + c] !== 0
}

describe('occupancy', () => {
  it('counts the squares that something lies on, as a count one by one does', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 6 }), anyBox, (boxes, look) => {
        const map = mapOf(boxes)
        const slow = slowTaken(boxes, look)
        expect(takenIn(map, look)).toBe(slow)
        expect(clearUnder(map, boxCorners(look), 1)).toBe(slow === 0)
        expect(boxCounter(map, (kinds) => kinds)(look.x0, look.y0, look.x1, look.y1)).toBe(slow)
        expect(weightIn(map, [0, 1], Number.POSITIVE_INFINITY, look.x0, look.y0, look.x1, look.y1)).toBe(slow)
        // it may stop as soon as it is as much as is asked for
        expect(weightIn(map, [0, 1], 3, look.x0, look.y0, look.x1, look.y1) >= 3).toBe(slow >= 3)
      }),
      { numRuns: 400, seed: 21 },
    )
  })

  it('tells kinds of things apart, and finds those of several together', () => {
    fc.assert(
      fc.property(
        fc.array(anyBox, { maxLength: 4 }),
        fc.array(anyBox, { maxLength: 4 }),
        anyBox,
        (a, b, look) => {
          const map = mapOf(a, 1)
          for (const box of b) occupyBox(map, box, 4)
          for (const [kinds, boxes] of [
            [1, a],
            [4, b],
            [5, [...a, ...b]],
            [2, []],
          ] as const) {
            expect(takenIn(map, look, kinds)).toBe(slowTaken(boxes, look))
            // more than a byte holds
            expect(
              boxCounter(map, (of) => ((of & kinds) === 0 ? 0 : 300))(look.x0, look.y0, look.x1, look.y1),
            ).toBe(300 * slowTaken(boxes, look))
          }
        },
      ),
      { numRuns: 200, seed: 23 },
    )
  })

  it('what a square carries, a coarser one carries, and nothing else', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 5 }), fc.constantFrom(0, 1, 2, 3), (boxes, less) => {
        // as wide as some squares together, and a little wider
        const by = 4
        const [wide, high] = [width - less, height - less]
        const map = occupancyOf(wide, high, 1)
        boxes.forEach((box, i) => {
          occupyBox(map, box, 1 << i)
        })
        const coarse = coarser(map)
        const some = coarser(map, 5)
        expect(coarse.step).toBe(by)
        for (let row = 0; row * by < high; row++)
          for (let column = 0; column * by < wide; column++) {
            let all = 0
            for (let y = row * by; y < Math.min(high, (row + 1) * by); y++)
              for (let x = column * by; x < Math.min(wide, (column + 1) * by); x++)
                all |= map.taken[y * map.stride + x]!
            const at = row * coarse.stride + column
            if (coarse.taken[at] !== all || some.taken[at] !== (all & 5)) throw new Error(`${column} ${row}`)
          }
      }),
      { numRuns: 60, seed: 27 },
    )
  })

  it('a rectangle that lies anyhow takes every square that it touches, and none farther off than asked', () => {
    fc.assert(
      fc.property(
        value,
        value,
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.constantFrom(0, 0.4, 2),
        (x, y, angle, around) => {
          const [wide, high] = [31, 7]
          const map = occupancyOf(width, height, 0.8)
          const place = affineThen(affineRotate(angle), affineTranslate(x, y))
          const at = (u: number, v: number) => affineApply(place, { x: u * wide, y: v * high })
          let missed = 0
          occupyUnder(map, [at(0, 0), at(1, 0), at(1, 1), at(0, 1)], around, 1)
          for (let u = 0; u <= 1; u += 1 / 64)
            for (let v = 0; v <= 1; v += 1 / 16) {
              const p = at(u, v)
              if (!isTaken(map, p.x + around * 0.99, p.y - around * 0.99)) missed++
            }
          // back in the rectangle's own frame, with half a square's diagonal and the corner of what lies around
          const reach = (0.4 + around) * Math.SQRT2 + 0.01
          for (const square of takenSquares(map)) {
            const [dx, dy] = [square.x - x, square.y - y]
            const along = dx * Math.cos(angle) + dy * Math.sin(angle)
            const up = dy * Math.cos(angle) - dx * Math.sin(angle)
            if (Math.max(-along, along - wide, -up, up - high) > reach + 0.8) missed++
          }
          expect(missed).toBe(0)
        },
      ),
      { numRuns: 60, seed: 24 },
    )
  })

  it('a line takes every square that it runs through, and none farther off than asked', () => {
    fc.assert(
      fc.property(value, value, value, value, fc.constantFrom(0, 0.2, 1.5), (x0, y0, x1, y1, around) => {
        const map = occupancyOf(width, height, 0.8)
        occupyPath(map, pathOf({ x: x0, y: y0 }, { x: x1, y: y1 }), [1, 0, 0, 1, 0, 0], around, 2)
        const long = Math.hypot(x1 - x0, y1 - y0)
        let missed = 0
        for (let t = 0; t <= 1; t += 0.002)
          if (!isTaken(map, x0 + t * (x1 - x0) + around * 0.99, y0 + t * (y1 - y0))) missed++
        for (const { x, y, kinds } of takenSquares(map)) {
          if (kinds !== 2) missed++
          const t = long === 0 ? 0 : ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / long ** 2
          const u = Math.min(1, Math.max(0, t))
          const off = Math.hypot(x - x0 - u * (x1 - x0), y - y0 - u * (y1 - y0))
          if (off > (0.4 + around) * Math.SQRT2 + 1e-6) missed++
        }
        expect(missed).toBe(0)
      }),
      { numRuns: 150, seed: 25 },
    )
  })

  it('an arc, turned, moved, scaled and mirrored, takes every square that it runs through, and none farther off', () => {
    const turn = fc.double({ min: -7, max: 7, noNaN: true }).filter((v) => Math.abs(v) > 0.01)
    let looked = 0
    fc.assert(
      fc.property(
        value,
        value,
        fc.double({ min: 3, max: 400, noNaN: true }),
        turn,
        turn,
        turn,
        fc.constantFrom(0.3, 1),
        fc.boolean(),
        (x, y, radius, start, sweep, angle, scale, mirrored) => {
          const map = occupancyOf(width, height, 0.8)
          const around = 0.2
          // the arc passes near the window's middle
          const centre = { x: x - radius * Math.cos(start), y: y - radius * Math.sin(start) }
          const turned = affineThen(
            [scale, 0, 0, mirrored ? -scale : scale, 0, 0],
            affineThen(affineRotate(angle), affineTranslate(50, 35)),
          )
          const frame = affineThen(affineTranslate(-x, -y), turned)
          const path = segmentsPath([arcSegment(centre, radius, start, sweep)])
          occupyPath(map, path, frame, around, 1)
          const middle = affineApply(frame, centre)
          const ends: { x: number; y: number }[] = []
          let missed = 0
          const steps = Math.ceil(radius * Math.abs(sweep)) * 4
          for (let i = 0; i <= steps; i++) {
            const a = start + (i / steps) * sweep
            const p = affineApply(frame, {
              x: centre.x + radius * Math.cos(a),
              y: centre.y + radius * Math.sin(a),
            })
            if (i === 0 || i === steps) ends.push(p)
            if (!isTaken(map, p.x, p.y)) missed++
            looked++
          }
          expect(missed).toBe(0)
          for (const { x: sx, y: sy } of takenSquares(map)) {
            const off = Math.abs(Math.hypot(sx - middle.x, sy - middle.y) - radius * scale)
            const end = Math.min(...ends.map((p) => Math.hypot(sx - p.x, sy - p.y)))
            if (Math.min(off, end) > (0.4 + around) * Math.SQRT2 + 0.05) missed++
          }
          expect(missed).toBe(0)
        },
      ),
      { numRuns: 100, seed: 26 },
    )
    expect(looked).toBeGreaterThan(50_000)
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
          const count = boxCounter(map, (kinds) => kinds)
          const found = leastPlace(count, w, h, within)!
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

  it('is the first of the places with the widest empty border, as a look at each of them finds', () => {
    let free = 0
    fc.assert(
      fc.property(
        fc.array(anyBox, { maxLength: 8 }),
        fc.integer({ min: 5, max: 60 }).map((v) => v + 0.5),
        fc.integer({ min: 5, max: 40 }).map((v) => v + 0.5),
        (boxes, w, h) => {
          const map = mapOf(boxes)
          const borderOf = (place: Box): number =>
            [24, 18, 12, 6, 0].find((by) => takenIn(map, boxGrow(place, by)) === 0) ?? -1
          const borders = places(w, h).map(borderOf)
          const widest = Math.max(...borders)
          const first = places(w, h)[borders.indexOf(widest)]!
          const found = freePlace(
            boxCounter(map, (kinds) => kinds),
            w,
            h,
            within,
          )
          expect(found).toEqual(widest < 0 ? null : { x: first.x0, y: first.y0 })
          if (widest >= 0) free++
        },
      ),
      { numRuns: 300, seed: 29 },
    )
    expect(free).toBeGreaterThan(60)
    expect(free).toBeLessThan(290)
  })

  it('keeps away from what is there where it can', () => {
    // a wall down the middle: the widest border is at either side, not along the wall
    const map = mapOf([{ x0: 46, x1: 54, y0: 0, y1: 70 }])
    const at = freePlace(
      boxCounter(map, (kinds) => kinds),
      12.5,
      12.5,
      within,
    )!
    expect(at.x + 12.5 < 46 - 12 || at.x > 54 + 12).toBe(true)
  })

  it('is null where the block is larger than the room', () => {
    const count = boxCounter(mapOf([]), (kinds) => kinds)
    for (const [w, h] of [
      [97, 10],
      [10, 67],
    ] as const) {
      expect(freePlace(count, w, h, within)).toBeNull()
      expect(leastPlace(count, w, h, within)).toBeNull()
    }
  })
})
