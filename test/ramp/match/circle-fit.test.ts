import { describe, expect, test } from 'vitest'
import { fitCircle } from '../../../src/ramp/match/circle-fit.ts'
import { matchCircle } from '../../../src/ramp/match/matched.ts'
import { studentT } from '../../../src/ramp/match/student.ts'
import { fromChord, fromRun } from '../../../src/ramp/match/two-lengths.ts'
import { assertNear } from '../../support/near.ts'
import { randomFrom } from '../../support/random.ts'

const degree = Math.PI / 180

/** Points of the ridden face of a ramp, from near its toe to its lip, level at the floor at x = 0. */
const facePoints = (radius: number, from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const x = radius * (Math.sin(from) + ((Math.sin(to) - Math.sin(from)) * i) / (count - 1))
    return { x, y: radius - Math.sqrt(radius * radius - x * x) }
  })

const normalFrom = (next: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())

describe('the circle nearest to points', () => {
  test('is the circle that they lie on, wherever and however few', () => {
    for (const radius of [400, 1700, 6000])
      for (const count of [3, 5, 9]) {
        const fit = fitCircle(
          facePoints(radius, 8 * degree, 55 * degree, count).map(({ x, y }) => ({ x: x + 123, y: y - 45 })),
        )!
        assertNear(fit.radius, radius, 1e-6)
        assertNear(fit.centre.x, 123, 1e-6)
        assertNear(fit.centre.y, radius - 45, 1e-6)
      }
  })

  test('is where the squares are least: any small move makes them more', () => {
    const noise = normalFrom(randomFrom(3))
    const points = facePoints(1700, 5 * degree, 50 * degree, 11).map(({ x, y }) => ({
      x: x + noise(),
      y: y + noise(),
    }))
    const fit = fitCircle(points)!
    const squares = (x: number, y: number, radius: number): number =>
      points.reduce((sum, p) => sum + (Math.hypot(p.x - x, p.y - y) - radius) ** 2, 0)
    const least = squares(fit.centre.x, fit.centre.y, fit.radius)
    for (const [dx, dy, dr] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [1, 1, 1],
      [-1, 1, 1],
      [1, -1, 0.5],
    ] as const)
      for (const sign of [1, -1])
        expect(
          squares(
            fit.centre.x + 0.01 * sign * dx,
            fit.centre.y + 0.01 * sign * dy,
            fit.radius + 0.01 * sign * dr,
          ),
        ).toBeGreaterThan(least)
  })

  test('is none through points of one line, or of fewer than three places', () => {
    expect(
      fitCircle([
        { x: 0, y: 0 },
        { x: 100, y: 100 },
        { x: 300, y: 300 },
        { x: 700, y: 700 },
      ]),
    ).toBeNull()
    expect(
      fitCircle([
        { x: 0, y: 0 },
        { x: 0, y: 0 },
        { x: 300, y: 300 },
      ]),
    ).toBeNull()
    expect(
      fitCircle([
        { x: 0, y: 0 },
        { x: 1, y: 0 },
      ]),
    ).toBeNull()
  })
})

describe('what is told of noisy offsets of 1,000 known circles', () => {
  test.each([
    ['normal errors of 1 mm both ways', true, true],
    ['even errors of up to 1 mm, of heights alone', false, false],
  ] as const)('%s: the interval holds the true radius 93 to 97 times of 100', (_, normal, both) => {
    const next = randomFrom(normal ? 11 : 12)
    const gauss = normalFrom(next)
    const error = (): number => (normal ? gauss() : 2 * next() - 1)
    let held = 0
    for (let i = 0; i < 1000; i++) {
      const radius = 1000 + 1500 * next()
      const points = facePoints(
        radius,
        (4 + 12 * next()) * degree,
        (40 + 28 * next()) * degree,
        7 + Math.floor(8 * next()),
      )
      const [least, most] = matchCircle(
        points.map(({ x, y }) => ({ x: x + (both ? error() : 0), y: y + error() })),
        1,
      )!.interval
      if (least <= radius && radius <= most) held++
    }
    expect(held).toBeGreaterThanOrEqual(930)
    expect(held).toBeLessThanOrEqual(970)
  })

  test('a blunder of 10 mm off the curve among nine points is named in 99 of 100; without one, a point is named in few', () => {
    const next = randomFrom(13)
    let [named, blamed] = [0, 0]
    for (let i = 0; i < 1000; i++) {
      const radius = 1000 + 1500 * next()
      const good = facePoints(radius, (4 + 12 * next()) * degree, (40 + 28 * next()) * degree, 9).map(
        ({ x, y }) => ({
          x,
          y: y + 2 * next() - 1,
        }),
      )
      if (matchCircle(good, 1)!.suspect.length > 0) blamed++
      const at = Math.floor(9 * next())
      const off = next() < 0.5 ? 10 : -10
      const lean = Math.asin(good[at]!.x / radius)
      const bad = good.map(({ x, y }, k) =>
        k === at ? { x: x - off * Math.sin(lean), y: y + off * Math.cos(lean) } : { x, y },
      )
      if (matchCircle(bad, 1)!.suspect[0] === at + 1) named++
    }
    expect(named).toBeGreaterThanOrEqual(990)
    expect(blamed).toBeLessThan(60)
  })

  test('two heights in each other’s line are named', () => {
    const points = facePoints(1700, 8 * degree, 50 * degree, 9)
    const mixed = points.map((p, i) =>
      i === 3 ? { x: p.x, y: points[4]!.y } : i === 4 ? { x: p.x, y: points[3]!.y } : p,
    )
    expect(matchCircle(mixed, 1)!.swapped).toEqual([4, 5])
    expect(matchCircle(points, 1)!.swapped).toBeNull()
  })

  test('an ellipse half as high as it is wide is not believed to be a circle', () => {
    const points = Array.from({ length: 11 }, (_, i) => {
      const angle = (i * 80 * degree) / 10
      return { x: 1700 * Math.sin(angle), y: 850 * (1 - Math.cos(angle)) }
    })
    expect(matchCircle(points, 1)!.believable).toBe(false)
    expect(matchCircle(facePoints(1700, 0, 60 * degree, 11), 1)!.believable).toBe(true)
  })
})

describe('a circle from two lengths', () => {
  test('segments of circles, Machinery’s Handbook 31st ed., pp. 79 and 50', () => {
    assertNear(fromChord(16, 6, 0).radius, 25 / 3, 1e-12)
    // r 60, h 8: chord 59.8665, printed as 59.86
    assertNear(fromChord(59.8665, 8, 0).radius, 60, 1e-3)
    assertNear(fromChord(13.2665, 2, 0).radius, 12, 1e-4)
  })

  test('run and height of a ramp that is level at the floor', () => {
    // computed from R (1 - cos 50°) and R sin 50°
    assertNear(
      fromRun(1700 * Math.sin(50 * degree), 1700 * (1 - Math.cos(50 * degree)), 0).radius,
      1700,
      1e-9,
    )
  })

  test('the interval holds what any pair of readings within the error gives', () => {
    const { interval } = fromChord(1000, 70, 1)
    for (const c of [999, 1000, 1001])
      for (const h of [69, 70, 71]) {
        const radius = (c * c) / (8 * h) + h / 2
        expect(interval[0] <= radius && radius <= interval[1]).toBe(true)
      }
  })
})

test('Student’s t leaves 2.5 % of the area above it, by summing the density', () => {
  for (const spare of [1, 2, 5, 6, 12, 30, 40, 200]) {
    // x = tan-like substitution keeps the far tail: x = u / (1 - u)
    let [area, above] = [0, 0]
    const steps = 400_000
    for (let i = 0; i < steps; i++) {
      const u = (i + 0.5) / steps
      const x = u / (1 - u)
      const density = (1 + (x * x) / spare) ** (-(spare + 1) / 2) / (1 - u) ** 2
      area += density
      if (x > studentT(spare)) above += density
    }
    expect(Math.abs(above / area / 2 - 0.025)).toBeLessThan(2e-5)
  }
})
