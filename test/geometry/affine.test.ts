import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Affine,
  affineAngle,
  affineApply,
  affineIdentity,
  affineInvert,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../src/geometry/affine.ts'
import { assertNear } from '../support/near.ts'
import { anyPoint } from '../support/paths.ts'

const entry = fc.double({ min: -3, max: 3, noNaN: true })
const anyMap = fc
  .tuple(entry, entry, entry, entry, entry, entry)
  .filter(([a, b, c, d]) => Math.abs(a * d - b * c) > 0.05) as fc.Arbitrary<Affine>

test('a map and its inverse cancel, either way round', () => {
  fc.assert(
    fc.property(anyMap, anyPoint, (map, p) => {
      const inverse = affineInvert(map)
      for (const q of [
        affineApply(inverse, affineApply(map, p)),
        affineApply(map, affineApply(inverse, p)),
      ]) {
        assertNear(q.x, p.x, 1e-8)
        assertNear(q.y, p.y, 1e-8)
      }
    }),
  )
})

test('a flat or endless map has no inverse', () => {
  expect(() => affineInvert([1, 2, 2, 4, 0, 0])).toThrow(RangeError)
  expect(() => affineInvert([Number.NaN, 0, 0, 1, 0, 0])).toThrow(RangeError)
})

test('then does the first map first', () => {
  fc.assert(
    fc.property(anyMap, anyMap, anyPoint, (first, second, p) => {
      const [q, r] = [affineApply(affineThen(first, second), p), affineApply(second, affineApply(first, p))]
      assertNear(q.x, r.x, 1e-8)
      assertNear(q.y, r.y, 1e-8)
    }),
  )
  // turn (1, 0) to (0, 1), then move by 10
  expect(affineApply(affineThen(affineRotate(Math.PI / 2), affineTranslate(10, 0)), { x: 1, y: 0 })).toEqual({
    x: 10,
    y: 1,
  })
})

describe('turns', () => {
  test.each([
    [-2, -1, 0],
    [-1, 0, -1],
    [0, 1, 0],
    [1, 0, 1],
    [2, -1, 0],
    [3, 0, -1],
    [4, 1, 0],
    [5, 0, 1],
  ])('%d quarter turns are exact', (quarters, x, y) => {
    const p = affineApply(affineRotate((quarters * Math.PI) / 2), { x: 1, y: 0 })
    expect([p.x + 0, p.y + 0]).toEqual([x, y])
  })

  test('30 degrees turn (2, 0) to (√3, 1)', () => {
    const p = affineApply(affineRotate(Math.PI / 6), { x: 2, y: 0 })
    assertNear(p.x, Math.sqrt(3), 1e-15)
    assertNear(p.y, 1, 1e-15)
  })
})

test('a direction goes where the points along it go, stretched and mirrored', () => {
  fc.assert(
    fc.property(anyMap, fc.double({ min: -3, max: 3, noNaN: true }), (map, angle) => {
      const [p, q] = [
        affineApply(map, { x: 1, y: 2 }),
        affineApply(map, { x: 1 + Math.cos(angle), y: 2 + Math.sin(angle) }),
      ]
      const off = affineAngle(map, angle) - Math.atan2(q.y - p.y, q.x - p.x)
      assertNear(Math.cos(off), 1, 1e-9)
    }),
  )
  assertNear(affineAngle(affineScale(-1, 1), 0), Math.PI, 1e-15)
  assertNear(affineAngle(affineIdentity, 1), 1, 1e-15)
})
