import { Bezier } from 'bezier-js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cubicArcError, pathCubics } from '../../src/geometry/cubics.ts'
import { arcSegment, type Path, pathSegments, segmentsPath } from '../../src/geometry/path.ts'
import { assertNear } from '../support/near.ts'
import { anyArc, sideOutline } from '../support/paths.ts'

const degree = Math.PI / 180
const origin = { x: 0, y: 0 }

const beziers = (path: Path): Bezier[] =>
  pathSegments(path).map((s) => {
    if (s.kind !== 'cubic') throw new Error(`${s.kind} is no cubic`)
    return new Bezier(s.from, s.c1, s.c2, s.to)
  })

/** Largest distance of the curves from a circle, by samples. */
const radialError = (curves: readonly Bezier[], centre: { x: number; y: number }, radius: number): number => {
  let worst = 0
  for (const curve of curves)
    for (let i = 0; i <= 400; i++) {
      const p = curve.get(i / 400)
      worst = Math.max(worst, Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius))
    }
  return worst
}

describe('one cubic for an arc (Goldapp 1991; Dokken 1990)', () => {
  test.each([
    [90, 2.7253e-4],
    [45, 4.2455e-6],
    [30, 3.7266e-7],
    [22.5, 6.6324e-8],
  ])('%d degrees stray by %d of the radius: by the formula and as measured', (angle, error) => {
    // the formula is half the error of x² + y², which is above the error of the radius by a quarter of itself
    assertNear(cubicArcError(angle * degree) / error, 1, 2e-4, 'formula')
    const one = pathCubics(segmentsPath([arcSegment(origin, 1, 0.3, angle * degree)]), 1)
    expect(one.pieces).toHaveLength(1)
    assertNear(radialError(beziers(one), origin, 1) / error, 1, 1e-4, 'measured')
  })
})

test('cubics of any arc keep to the tolerance, run from end to end, and are as few as the formula allows', () => {
  fc.assert(
    fc.property(anyArc, fc.double({ min: 1e-5, max: 1, noNaN: true }), (arc, tolerance) => {
      const curves = beziers(pathCubics(segmentsPath([arc]), tolerance))
      expect(radialError(curves, arc.centre, arc.radius)).toBeLessThanOrEqual(tolerance * (1 + 1e-6) + 1e-9)
      expect(curves[0]!.points[0]).toMatchObject(arc.from)
      expect(curves.at(-1)!.points[3]).toMatchObject(arc.to)
      const fewer = curves.length - 1
      const quarters = Math.ceil(Math.abs(arc.sweep) / (Math.PI / 2))
      if (fewer >= quarters)
        expect(cubicArcError(Math.abs(arc.sweep) / fewer) * arc.radius).toBeGreaterThan(tolerance)
      // all round, not a short cut: the tape's length is that of the arc (relative error of the length is below that of the radius)
      const length = curves.reduce((sum, curve) => sum + curve.length(), 0)
      assertNear(length, arc.radius * Math.abs(arc.sweep), tolerance * 2 * Math.PI + 1e-6, 'length')
    }),
    { numRuns: 60 },
  )
})

/** Distance of a point from a curve: `project` of bezier-js finds the place to some tenths of a mm, thirds refine it. */
const distance = (curve: Bezier, p: { x: number; y: number }): number => {
  const at = (t: number) => {
    const q = curve.get(Math.min(1, Math.max(0, t)))
    return Math.hypot(q.x - p.x, q.y - p.y)
  }
  const seed = curve.project(p).t!
  let [low, high] = [seed - 0.02, seed + 0.02]
  for (let i = 0; i < 60; i++) {
    const third = (high - low) / 3
    if (at(low + third) < at(high - third)) high -= third
    else low += third
  }
  return at((low + high) / 2)
}

test('at a radius of 3 m points of the arc lie within 0.001 mm of the cubics', () => {
  const arc = arcSegment({ x: -200, y: 3000 }, 3000, -Math.PI / 2, 80 * degree)
  const curves = beziers(pathCubics(segmentsPath([arc]), 0.001))
  const distances = Array.from({ length: 61 }, (_, i) => {
    const angle = -Math.PI / 2 + (80 * degree * i) / 60
    const p = { x: -200 + 3000 * Math.cos(angle), y: 3000 + 3000 * Math.sin(angle) }
    return Math.min(...curves.map((curve) => distance(curve, p)))
  })
  expect(Math.max(...distances)).toBeLessThan(1e-3)
  // and not better than the formula says, so the tape is a tape
  expect(Math.max(...distances)).toBeGreaterThan(0.5 * 3000 * cubicArcError((80 * degree) / curves.length))
})

test('lines and cubics pass unchanged, joints stay the stored points', () => {
  const cubics = pathCubics(sideOutline, 0.01)
  expect(cubics.closed).toBe(true)
  expect(cubics.pieces.slice(0, 4)).toEqual(sideOutline.pieces.slice(0, 4))
  const joints = cubics.pieces.map((piece) => piece.to)
  for (const piece of sideOutline.pieces) expect(joints).toContainEqual(piece.to)
})

test.each([
  [Number.POSITIVE_INFINITY, 1, 0.01],
  [Number.NaN, 1, 0.01],
  [10, Number.NaN, 0.01],
  [10, Number.POSITIVE_INFINITY, 0.01],
  [10, 1, 0],
  [10, 1, Number.NaN],
])('an arc of radius %d and sweep %d within %d is refused', (radius, sweep, tolerance) => {
  expect(() => pathCubics(segmentsPath([arcSegment(origin, radius, 0, sweep)]), tolerance)).toThrow(
    RangeError,
  )
})
