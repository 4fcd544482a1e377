import fc from 'fast-check'
import { test } from 'vitest'
import { segmentAt } from '../../src/geometry/at.ts'
import { pathCentroid } from '../../src/geometry/centroid.ts'
import { pathCubics } from '../../src/geometry/cubics.ts'
import { circle, type Path, pathSegments, rectangle } from '../../src/geometry/path.ts'
import { assertNear } from '../support/near.ts'

/** By thin triangles from the origin to many chords. */
const slow = (path: Path) => {
  let [area, mx, my] = [0, 0, 0]
  for (const segment of pathSegments(path)) {
    const steps = segment.kind === 'line' ? 1 : 4000
    for (let i = 0; i < steps; i++) {
      const [a, b] = [segmentAt(segment, i / steps), segmentAt(segment, (i + 1) / steps)]
      const cross = a.x * b.y - a.y * b.x
      area += cross / 2
      mx += (cross * (a.x + b.x)) / 6
      my += (cross * (a.y + b.y)) / 6
    }
  }
  return { area, centre: { x: mx / area, y: my / area } }
}

test('a rectangle and a circle, by hand', () => {
  const box = pathCentroid(rectangle(1, 2, 4, 6))
  assertNear(box.area, 12, 1e-12)
  assertNear(box.centre.x, 2.5, 1e-12)
  assertNear(box.centre.y, 4, 1e-12)
  const { area, centre } = pathCentroid(circle({ x: 30, y: -7 }, 5))
  assertNear(area, 25 * Math.PI, 1e-9)
  assertNear(centre.x, 30, 1e-9)
  assertNear(centre.y, -7, 1e-9)
})

test('a panel with an arc cut out of it or set on it is what thin triangles sum to', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 200, max: 2000, noNaN: true }),
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      fc.boolean(),
      (radius, sweep, out) => {
        const half = radius * Math.sin(sweep / 2)
        const rise = radius * Math.cos(sweep / 2)
        // from the right to the left over the top, or under it
        const path: Path = {
          start: { x: -half, y: -3 * radius },
          pieces: [
            { kind: 'line', to: { x: half, y: -3 * radius } },
            { kind: 'line', to: { x: half, y: 0 } },
            {
              kind: 'arc',
              to: { x: -half, y: 0 },
              centre: { x: 0, y: out ? -rise : rise },
              sweep: out ? sweep : -sweep,
            },
            { kind: 'line', to: { x: -half, y: -3 * radius } },
          ],
          closed: true,
        }
        const [mine, other] = [pathCentroid(path), slow(path)]
        assertNear(mine.area / other.area, 1, 1e-6)
        assertNear(mine.centre.x, other.centre.x, 1e-3)
        assertNear(mine.centre.y, other.centre.y, 2e-3)
      },
    ),
    { numRuns: 50 },
  )
})

test('what lies under a cubic is what thin triangles sum to, and a circle of cubics is the circle', () => {
  const number = fc.double({ min: -500, max: 500, noNaN: true })
  const at = fc.record({ x: number, y: number })
  fc.assert(
    fc.property(at, at, (c1, c2) => {
      const path: Path = {
        start: { x: -700, y: -600 },
        pieces: [
          { kind: 'line', to: { x: 700, y: -600 } },
          { kind: 'cubic', c1, c2, to: { x: -700, y: -550 } },
        ],
        closed: true,
      }
      const [mine, other] = [pathCentroid(path), slow(path)]
      assertNear(mine.area / other.area, 1, 1e-5)
      assertNear(mine.centre.x, other.centre.x, 1e-2)
      assertNear(mine.centre.y, other.centre.y, 1e-2)
    }),
    { numRuns: 50 },
  )
  const round = circle({ x: 30, y: -7 }, 500)
  const { area, centre } = pathCentroid(pathCubics(round, 1e-6))
  assertNear(Math.sqrt(area / Math.PI), 500, 1e-6)
  assertNear(centre.x, 30, 1e-6)
  assertNear(centre.y, -7, 1e-6)
})
