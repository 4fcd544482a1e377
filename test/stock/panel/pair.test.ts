import { describe, expect, test } from 'vitest'
import { affineApply, affineRotate, affineScale, affineThen } from '../../../src/geometry/affine.ts'
import { pathBounds } from '../../../src/geometry/bounds.ts'
import type { Path } from '../../../src/geometry/path.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { pairFit } from '../../../src/stock/panel/pair.ts'
import { blankOf } from '../../../src/stock/panel/place/shape.ts'
import { circleOf, plain, solve } from '../../ramp/ramps.ts'
import { randomFrom } from '../../support/random.ts'

const random = randomFrom(7)
const between = (least: number, most: number): number => least + random() * (most - least)

/** Sides as they are built: some of them longer than they are high, some nearly square. */
const sides = (count: number): readonly Path[] => {
  const found: Path[] = []
  while (found.length < count) {
    const radius = between(1200, 2600)
    const height = radius * between(0.25, 0.6)
    const { ramp } = solve({
      ...plain,
      height: { layer: 'frame', value: height },
      transition: circleOf('frame', radius),
      toe: between(20, 70),
      back: { from: 'deck', value: between(150, 700) },
    })
    if (ramp.side && ramp.side.length < 2400 && height < 1200) found.push(ramp.side.outline)
  }
  return found
}

/** Heights of a polygon over columns of 1 mm: the lowest and the highest of all points in each, found from samples. */
const columns = (path: Path, turn: number, mirrored: boolean) => {
  const map = affineThen(affineScale(mirrored ? -1 : 1, 1), affineRotate((turn * Math.PI) / 180))
  const points = pathSample(path, 0.5).map((p) => affineApply(map, p))
  const [left, low] = [Math.min(...points.map(({ x }) => x)), Math.min(...points.map(({ y }) => y))]
  const count = Math.ceil(Math.max(...points.map(({ x }) => x)) - left + 1e-6)
  const [under, over] = [new Float64Array(count).fill(1e9), new Float64Array(count).fill(-1e9)]
  for (const { x, y } of points) {
    const i = Math.min(count - 1, Math.floor(x - left))
    under[i] = Math.min(under[i]!, y - low)
    over[i] = Math.max(over[i]!, y - low)
  }
  return { count, under, over, high: Math.max(...over) }
}

/** The least width for a length by every 1 mm of shift and every angle given: the second end for end, or as the mirror image. */
const slowWidth = (path: Path, kerf: number, length: number, angles: readonly number[]): number => {
  let least = Number.POSITIVE_INFINITY
  for (const angle of angles) {
    const own = columns(path, angle, false)
    if (own.count > length) continue
    for (const [turn, mirrored] of [
      [angle, false],
      [angle + 180, false],
      [-angle, true],
      [180 - angle, true],
    ] as const) {
      const other = columns(path, turn, mirrored)
      if (Math.min(own.high, other.high) >= least) continue
      for (let dx = own.count - length; dx <= length - other.count; dx++) {
        let up = Number.NEGATIVE_INFINITY
        const [from, to] = [Math.max(0, dx), Math.min(own.count, dx + other.count)]
        for (let x = from; x < to; x++) up = Math.max(up, own.over[x]! - other.under[x - dx]!)
        const width = from >= to ? Math.max(own.high, other.high) : Math.max(own.high, up + kerf + other.high)
        if (width < least) least = width
      }
    }
  }
  return least
}

const sidesOf200 = sides(200)

describe('two sides in a strip', () => {
  test('take no more than side by side, and no more than one turned end for end, for 200 pairs', () => {
    let better = 0
    for (const path of sidesOf200) {
      const { x0, y0, x1, y1 } = pathBounds(path)
      const [long, high] = [x1 - x0, y1 - y0]
      const length = 2430
      const blank = blankOf(path)
      // boxes above each other, or beside each other where the length takes both; flat or on end
      const boxes = [
        long <= length ? 2 * high + 3 : Number.POSITIVE_INFINITY,
        2 * long + 3 <= length ? high : Number.POSITIVE_INFINITY,
        2 * high + 3 <= length ? long : Number.POSITIVE_INFINITY,
      ]
      const least = Math.min(...boxes)
      const fit = pairFit(blank, blank, 3, length, [false, true], 0.98 * least)!
      expect(fit.width).toBeLessThanOrEqual(least + 0.51)
      if (fit.width <= 0.98 * least) better++
    }
    expect(better).toBeGreaterThan(100)
  })

  test('end for end lie as well as at any millimetre of the length, also where they nearly lie beside each other', () => {
    // these lie best between two steps along the length
    for (const i of [47, 121, 153, 193, 197]) {
      const path = sidesOf200[i]!
      const blank = blankOf(path)
      const slow = slowWidth(path, 0, 2430, [0])
      const fit = pairFit(blank, blank, 0, 2430, [false, true], slow)!
      expect(fit.width).toBeLessThanOrEqual(slow + 0.5)
    }
  })

  test('lie within 2 % of a slow search over every millimetre', () => {
    for (const path of sides(3)) {
      const blank = blankOf(path)
      const { y0, y1, x0, x1 } = pathBounds(path)
      // so short that they must lie over each other
      const length = Math.round((x1 - x0) * 1.12)
      const fit = pairFit(blank, blank, 3, length, [false, true])!
      const slow = slowWidth(path, 3, length, [0, 4, 8, 172, 176])
      expect(fit.width).toBeLessThanOrEqual(slow * 1.02)
      expect(fit.width).toBeGreaterThan(y1 - y0 - 1)
    }
  })
})
