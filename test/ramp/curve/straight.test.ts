import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pathSegments, segmentsPath } from '../../../src/geometry/path.ts'
import { straightCurve } from '../../../src/ramp/curve/straight.ts'
import { assertNear } from '../../support/near.ts'
import { sampleBetween } from './sampled-curve.ts'

/** even over the range: doubles crowd round 0 */
const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => min + ((max - min) * n) / 10_000)
const edge = fc.record({
  x: real(-500, 500),
  y: real(-100, 400),
  angle: real(-0.6, 1.2),
  length: real(200, 3000),
})

test('an edge known by points alone gives the same answers, level or leaning', () => {
  let [heights, distances] = [0, 0]
  fc.assert(
    fc.property(
      fc.oneof(
        edge,
        edge.map((one) => ({ ...one, angle: 0 })),
      ),
      real(0.02, 0.98),
      real(-90, 90),
      (one, t, off) => {
        const { x, y, angle, length } = one
        const at = (along: number) => ({ x: x + along * Math.cos(angle), y: y + along * Math.sin(angle) })
        const count = 64
        const sampled = sampleBetween(at, 0, length, { count, before: 32, after: 32 })
        const straight = straightCurve(at(0), at(length))
        /** their places differ: index against length */
        const [index, place] = [32 + t * count, t * length]
        const same = (a: { x: number; y: number }, b: { x: number; y: number }, what: string): void =>
          assertNear(Math.hypot(a.x - b.x, a.y - b.y), 0, 1e-6, what)
        same(straight.point(place), sampled.point(index), 'point')
        same(straight.point(straight.lip), sampled.point(sampled.lip), 'end')
        assertNear(straight.slope(place), sampled.slope(index), 1e-9, 'slope')
        assertNear(straight.lengthTo(place), sampled.lengthTo(index), 1e-6, 'length')
        same(
          straight.point(straight.placeAtLength(place)),
          sampled.point(sampled.placeAtLength(place)),
          'place at a length',
        )
        same(straight.offset(off).point(place), sampled.offset(off).point(index), 'offset')
        assertNear(straight.offset(off).lip, length, 1e-6, 'an offset is as long')
        const p = straight.offset(off).point(place)
        assertNear(straight.nearest(p).distance, sampled.nearest(p).distance, 1e-6, 'distance')
        assertNear(straight.nearest(p).distance, -off, 1e-6, 'distance by hand')
        same(straight.point(straight.nearest(p).place), sampled.point(sampled.nearest(p).place), 'foot')
        if (Math.abs(angle) > 0.05) {
          heights++
          const height = straight.point(place).y
          same(
            straight.point(straight.placeAtHeight(height)!),
            sampled.point(sampled.placeAtHeight(height)!),
            'height',
          )
        }
        const far = Math.abs(off) + place * 0.4
        const found = straight.placeAtDistance(p, far)
        const other = sampled.placeAtDistance(p, far)
        if (other !== null && place - Math.sqrt(far * far - off * off) > -length / 2) {
          distances++
          same(straight.point(found!), sampled.point(other), 'distance from a point')
        }
        expect(straight.placeAtDistance(p, Math.abs(off) * 0.9 - 1)).toBeNull()
      },
    ),
    { numRuns: 500, seed: 51 },
  )
  expect(heights).toBeGreaterThan(150)
  expect(distances).toBeGreaterThan(150)
})

describe('a level edge', () => {
  const level = straightCurve({ x: 0, y: 89 }, { x: 2440, y: 89 })
  test('is at its own height from its start and at no other', () => {
    expect(level.placeAtHeight(89)).toBe(0)
    expect(level.placeAtHeight(88)).toBeNull()
  })
  test('is one segment, either way', () => {
    expect(level.segments(100, 300)).toEqual([
      { kind: 'line', from: { x: 100, y: 89 }, to: { x: 300, y: 89 } },
    ])
    const back = segmentsPath(level.segments(level.lip, level.toe))
    expect(pathSegments(back)).toEqual([{ kind: 'line', from: { x: 2440, y: 89 }, to: { x: 0, y: 89 } }])
  })
})
