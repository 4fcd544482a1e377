import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { bisect } from '../../src/geometry/bisect.ts'
import { cubicArcError, pathCubics } from '../../src/geometry/cubics.ts'
import { arcSegment, segmentsPath } from '../../src/geometry/path.ts'
import { sidePattern } from '../../src/pattern/side.ts'
import { bare, circleOf, inch, plain, plywood, solve, studded, transitionOf, wholeOf } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'

const degree = Math.PI / 180

/** Chord, middle rise, angle and arc of a whole curve, toe level at the floor, as the pattern and the figures state them; in `unit` mm. */
const measured = (design: QuarterDesign, unit: number) => {
  // thin studs find a place in every toe: the curve alone is measured
  const ramp = wholeOf({ ...design, studs: studded({ section: [12, 12] }) })
  const [chord, rise] = sidePattern(ramp, [], 'mm').distances
  const { arc, run, toeAngle, lipAngle } = ramp.transition
  return {
    chord: chord!.value / unit,
    rise: rise!.value / unit,
    arc: arc / unit,
    run: run / unit,
    angle: (lipAngle - toeAngle) / degree,
  }
}

/** A ramp whose curve runs from level through an angle (degrees). */
const through = (radius: number, angle: number): QuarterDesign =>
  bare(radius, radius * (1 - Math.cos(angle * degree)))

describe("segments of circles through the solver: Machinery's Handbook, 31st ed.", () => {
  test('p. 79: radius 60, rise 8: chord 59.8665', () => {
    // the whole angle of that segment: half of it has cos 52/60
    const { chord, rise } = measured(through(60 * inch, (2 * Math.acos(52 / 60)) / degree), inch)
    assertNear(chord, 59.8665, 5e-5)
    assertNear(rise, 8, 1e-9)
  })

  test('p. 79: chord 16, height 6: radius 8 1/3; half of it is a ramp 8 along and 6 up', () => {
    const { run } = measured(bare((100 * 25) / 3, 600), 100)
    assertNear(run, 8, 1e-9)
  })

  test('p. 50: radius 12, rise 2: 67.11462°, chord 13.26650, arc 14.05645', () => {
    const { chord, rise, arc, angle } = measured(through(1200, 67.11462), 100)
    assertNear(chord, 13.2665, 5e-6)
    assertNear(rise, 2, 5e-6)
    assertNear(arc, 14.05645, 5e-6)
    assertNear(angle, 67.11462, 1e-9)
  })

  test('p. 78: radius 35 through 60°: arc 36.6519', () => {
    assertNear(measured(through(35 * inch, 60), inch).arc, 36.6519, 5e-5)
  })

  // unit circle, computed independently from the definition (mpmath)
  test.each([
    [30, 0.52359878, 0.034074174, 0.51763809],
    [60, 1.0471976, 0.1339746, 1],
    [89, 89 * degree, 1 - Math.cos(44.5 * degree), 2 * Math.sin(44.5 * degree)],
  ])('unit circle, %d°', (angle, arc, rise, chord) => {
    const got = measured(through(1000, angle), 1000)
    assertNear(got.arc, arc, 5e-8)
    assertNear(got.rise, rise, 5e-8)
    assertNear(got.chord, chord, 5e-8)
  })
})

describe('curves of usual sizes, toe tangent to lip; computed independently from the definition', () => {
  // height, radius, chord, middle rise
  test.each([
    [24, 72, 58.79, 6.27],
    [36, 72, 72, 9.65],
    [48, 84, 89.8, 13.01],
  ])('%d high on a radius of %d: chord %d, rise %d', (height, radius, chord, rise) => {
    const got = measured(bare(radius * inch, height * inch), inch)
    assertNear(got.chord, chord, 0.005)
    assertNear(got.rise, rise, 0.005)
  })

  // x, y of a circle of 72 level at the origin
  test.each([
    [12, 1.007],
    [24, 4.118],
    [36, 9.646],
    [48, 18.334],
    [60, 32.201],
  ])('radius 72: %d along is %d up', (x, y) => {
    const { curve } = transitionOf(bare(72 * inch, 40 * inch))
    const place = bisect((p) => curve.point(p).x - x * inch, curve.toe, curve.lip)
    assertNear(curve.point(place).y / inch, y, 0.0005)
    // and the other way: the place at that height lies that far along; half of the last figure over the slope
    const back = curve.point(curve.placeAtHeight(y * inch)!)
    assertNear(back.x / inch, x, 0.0005 / Math.tan(curve.slope(place)) + 1e-9)
  })
})

describe('steepness: cos(lip) = 1 − h/R', () => {
  test.each([
    [3, 48.19],
    [2, 60],
    [1.5, 70.53],
    [1, 90],
  ])('radius %d times the height: %d°', (ratio, angle) => {
    assertNear(transitionOf(bare(600 * ratio, 600)).lipAngle / degree, angle, 0.005)
  })

  test('below 1 the lip overhangs', () => {
    const { ramp, findings } = solve(bare(599.9, 600))
    expect(ramp.transition).toBeNull()
    const stops = findings.filter((f) => f.level === 'stop')
    expect(stops.map((f) => f.id)).toEqual(['overhang'])
  })

  test('R = (run² + h²) / (2h) for a curve level at its toe', () => {
    for (const [radius, height] of [
      [1700, 640],
      [2000, 900],
      [1100, 300],
    ] as const) {
      const { run } = transitionOf(bare(radius, height))
      assertNear((run * run + height * height) / (2 * height), radius, 1e-6)
    }
  })
})

describe('a side that runs out to nothing where the ridden face is level at the floor', () => {
  const toeDistance = (face: number, skin: number): number => {
    const design: QuarterDesign = {
      ...plain,
      transition: circleOf('surface', face),
      skin: [plywood(skin)],
      toe: 0,
    }
    return -transitionOf(design).centre.x
  }

  test('radius 72, skin 1: 12.04 before the tangent point', () => {
    assertNear(toeDistance(72 * inch, inch) / inch, 12.04, 0.005)
  })

  test.each([
    [1700, 24],
    [2100, 15],
    [900, 40],
    [72 * inch, 7 / 8],
  ])('in general √(2ρs + s²): ρ %d, s %d', (face, skin) => {
    assertNear(toeDistance(face, skin), Math.sqrt(2 * face * skin + skin * skin), 1e-8)
  })
})

// one cubic for an arc: Goldapp 1991, Dokken 1990; shares of the radius
describe('the cubic in place of an arc', () => {
  test.each([
    [90, 2.7253e-4, 1e-8],
    [45, 4.2455e-6, 1e-10],
    [30, 3.7266e-7, 1e-11],
    [22.5, 6.6324e-8, 1e-12],
  ])('%d°: error %d of the radius', (angle, share, last) => {
    // the formula is the leading term: 1.4e-4 of itself too large at a quarter turn
    assertNear(cubicArcError(angle * degree), share, Math.max(last, share * 1.5e-4))
    // measured on the cubic itself: one piece, as the tolerance allows it
    const arc = arcSegment({ x: 0, y: 0 }, 1000, 0.2, angle * degree)
    const { start, pieces } = pathCubics(segmentsPath([arc]), share * 1000 * 1.01)
    expect(pieces.length).toBe(1)
    const [cubic] = pieces
    if (cubic?.kind !== 'cubic') throw new Error('no cubic')
    let worst = 0
    for (let i = 0; i <= 5000; i++) {
      const [t, u] = [i / 5000, 1 - i / 5000]
      const along = (a: number, b: number, c: number, d: number) =>
        u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d
      const p = {
        x: along(start.x, cubic.c1.x, cubic.c2.x, cubic.to.x),
        y: along(start.y, cubic.c1.y, cubic.c2.y, cubic.to.y),
      }
      worst = Math.max(worst, Math.abs(Math.hypot(p.x, p.y) - 1000))
    }
    assertNear(worst / 1000, share, last)
  })
})
