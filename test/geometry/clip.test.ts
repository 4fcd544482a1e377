import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { affineApply, affineRotate, affineThen, affineTranslate } from '../../src/geometry/affine.ts'
import { segmentAt } from '../../src/geometry/at.ts'
import { type Convex, convexContains, pathClip, pathOutside, segmentClip } from '../../src/geometry/clip.ts'
import { pathLength, segmentLength } from '../../src/geometry/length.ts'
import {
  arcSegment,
  circle,
  type Path,
  pathOf,
  pathSegments,
  rectangle,
  type Segment,
} from '../../src/geometry/path.ts'
import { type Point, pointDistance } from '../../src/geometry/point.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { above, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'
import { anyPoint, anySegment, pathTurned, sideOutline } from '../support/paths.ts'

const box = (x0: number, y0: number, x1: number, y1: number): Convex => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
]
const turnedBox = (centre: Point, width: number, height: number, angle: number): Convex =>
  box(-width / 2, -height / 2, width / 2, height / 2).map((p) =>
    affineApply(affineThen(affineRotate(angle), affineTranslate(centre.x, centre.y)), p),
  )
const anyWindow = fc
  .record({
    centre: anyPoint,
    width: fc.double({ min: 20, max: 800, noNaN: true }),
    height: fc.double({ min: 20, max: 800, noNaN: true }),
    angle: fc.double({ min: -4, max: 4, noNaN: true }),
  })
  .map(({ centre, width, height, angle }) => ({ centre, width, height, angle }))
const windowOf = (w: { centre: Point; width: number; height: number; angle: number }) =>
  turnedBox(w.centre, w.width, w.height, w.angle)

const total = (paths: readonly Path[]): number => paths.reduce((sum, path) => sum + pathLength(path), 0)

/** Length inside by walking: every step whose middle is on the left of all edges. Good to a step at each crossing. */
const walkedLength = (path: Path, polygon: Convex, steps: number): { length: number; step: number } => {
  let length = 0
  let longest = 0
  for (const segment of pathSegments(path))
    for (let i = 0; i < steps; i++) {
      const [a, m, b] = [i, i + 0.5, i + 1].map((k) => segmentAt(segment, k / steps)) as [Point, Point, Point]
      const step = pointDistance(a, b)
      longest = Math.max(longest, step)
      const inside = polygon.every((p, k) => {
        const q = polygon[(k + 1) % polygon.length]!
        return (q.x - p.x) * (m.y - p.y) - (q.y - p.y) * (m.x - p.x) >= 0
      })
      if (inside) length += step
    }
  return { length, step: longest }
}

describe('in closed form', () => {
  test('a window over the right half of a circle keeps half of it, in one piece', () => {
    const parts = pathClip(circle({ x: 0, y: 0 }, 100), box(0, -200, 200, 200))
    expect(parts).toHaveLength(1)
    assertNear(pathLength(parts[0]!), 100 * Math.PI, 1e-9)
    // the outline starts inside: its end and its beginning are joined again, through (100, 0)
    assertNear(parts[0]!.start.y, -100, 1e-9)
    assertNear(parts[0]!.pieces.at(-1)!.to.y, 100, 1e-9)
  })

  test('a square window of half side a leaves four arcs of a circle of radius r > a', () => {
    // between the sides each arc spans 90 degrees less twice acos(a/r)
    const parts = pathClip(circle({ x: 0, y: 0 }, 100), box(-90, -90, 90, 90))
    expect(parts).toHaveLength(4)
    for (const part of parts) assertNear(pathLength(part), 100 * (Math.PI / 2 - 2 * Math.acos(0.9)), 1e-9)
  })

  test('a window inside a circle, or far away, keeps nothing', () => {
    expect(pathClip(circle({ x: 0, y: 0 }, 100), box(-50, -50, 50, 50))).toEqual([])
    expect(pathClip(circle({ x: 0, y: 0 }, 100), box(500, 500, 550, 550))).toEqual([])
  })

  test('a circle inside a window is kept whole, also where it touches an edge', () => {
    for (const half of [200, 100]) {
      const parts = pathClip(circle({ x: 0, y: 0 }, 100), box(-half, -half, half, half))
      assertNear(total(parts), 200 * Math.PI, 1e-6)
    }
  })

  test('a line along an edge of the window is inside, one beside it is not', () => {
    const along: Segment = { kind: 'line', from: { x: -10, y: 0 }, to: { x: 50, y: 0 } }
    assertNear(segmentLength(segmentClip(along, box(0, 0, 20, 20))[0]!), 20, 1e-9)
    const beside: Segment = { kind: 'line', from: { x: -10, y: -1e-6 }, to: { x: 50, y: -1e-6 } }
    expect(segmentClip(beside, box(0, 0, 20, 20))).toEqual([])
  })

  test('a straight cubic along an edge is cut like the line', () => {
    const cubic: Segment = {
      kind: 'cubic',
      from: { x: -10, y: 0 },
      c1: { x: 10, y: 0 },
      c2: { x: 30, y: 0 },
      to: { x: 50, y: 0 },
    }
    const parts = segmentClip(cubic, box(0, 0, 20, 20))
    expect(parts).toHaveLength(1)
    assertNear(segmentLength(parts[0]!), 20, 1e-6)
  })

  test('a line through a corner of the window touches it in no length', () => {
    const through: Segment = { kind: 'line', from: { x: -10, y: 10 }, to: { x: 10, y: -10 } }
    assertNear(
      segmentClip(through, box(0, 0, 20, 20)).reduce((sum, s) => sum + segmentLength(s), 0),
      0,
      1e-6,
    )
  })

  test('arcs that run clockwise or start far round are cut where they cross', () => {
    for (const [from, sweep] of [
      [0, Math.PI],
      [Math.PI, -Math.PI],
      [4 * Math.PI, Math.PI],
      [-5 * Math.PI, -Math.PI],
    ] as const) {
      const parts = segmentClip(arcSegment({ x: 0, y: 0 }, 10, from, sweep), box(-20, 5, 20, 20))
      expect(parts).toHaveLength(1)
      // y >= 5 on a circle of 10: from 30 to 150 degrees
      assertNear(segmentLength(parts[0]!), (10 * 2 * Math.PI) / 3, 1e-9)
      expect(Math.sign((parts[0] as { sweep: number }).sweep)).toBe(Math.sign(sweep))
    }
  })
})

test('what a window keeps lies inside it and is part of the segment', () => {
  fc.assert(
    fc.property(anySegment, anyWindow, (segment, window) => {
      const polygon = windowOf(window)
      for (const part of segmentClip(segment, polygon)) {
        expect(part.kind).toBe(segment.kind)
        for (const t of [0, 0.1, 0.5, 0.77, 1]) hold(convexContains(polygon, segmentAt(part, t), 1e-6))
      }
    }),
  )
})

test('the length inside a window is what a walk along the segment finds', () => {
  fc.assert(
    fc.property(anySegment, anyWindow, (segment, window) => {
      const polygon = windowOf(window)
      const path = { start: segment.from, pieces: [], closed: false }
      const whole = { ...path, pieces: [pathPiece(segment)] }
      const { length, step } = walkedLength(whole, polygon, 3000)
      const inside = segmentClip(segment, polygon).reduce((sum, s) => sum + segmentLength(s), 0)
      // at most 8 crossings of a box by an arc, 12 by a cubic; and a cubic's summed length is good to 1e-3
      assertNear(inside, length, 12 * step + (segment.kind === 'cubic' ? 1e-3 * length : 1e-3))
    }),
    { numRuns: 200 },
  )
})

const pathPiece = (segment: Segment): Path['pieces'][number] => {
  if (segment.kind === 'line') return { kind: 'line', to: segment.to }
  if (segment.kind === 'cubic') return { kind: 'cubic', c1: segment.c1, c2: segment.c2, to: segment.to }
  return { kind: 'arc', to: segment.to, centre: segment.centre, sweep: segment.sweep }
}

test('a small shape cuts an arc only where it comes over it: within the circle and beyond it, near and far', () => {
  const seen = { inside: 0, beyond: 0, over: 0 }
  fc.assert(
    fc.property(
      fc.double({ min: 80, max: 400, noNaN: true }),
      fc.integer({ min: -30, max: 30 }),
      fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      fc.double({ min: -4, max: 4, noNaN: true }),
      (radius, off, at, turn) => {
        const middle = { x: (radius + off) * Math.cos(at), y: (radius + off) * Math.sin(at) }
        const shape = turnedBox(middle, 30, 10, turn)
        // corners are the farthest points of a box; the nearest one is in it or on an edge
        const far = Math.max(...shape.map((p) => Math.hypot(p.x, p.y)))
        const nearest = Math.min(
          ...pathSample(pathOf(shape[3]!, ...shape), 0.01).map((p) => Math.hypot(p.x, p.y)),
        )
        const near = convexContains(shape, { x: 0, y: 0 }) ? 0 : nearest
        if (Math.abs(far - radius) < 0.05 || Math.abs(near - radius) < 0.05) return
        const where = far < radius ? 'inside' : near > radius ? 'beyond' : 'over'
        seen[where]++
        const ring = circle({ x: 0, y: 0 }, radius)
        const left = total(pathOutside(ring, shape))
        const cut = total(pathClip(ring, shape))
        if (where === 'over') above(cut, 0)
        else expect(cut).toBe(0)
        assertNear(left + cut, 2 * Math.PI * radius, 1e-6)
      },
    ),
    { numRuns: 300, seed: 31 },
  )
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20)
})

test('a window split in two keeps together what the whole one keeps', () => {
  fc.assert(
    fc.property(
      anySegment,
      anyWindow,
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      (segment, window, share) => {
        const { width, height, centre, angle } = window
        const halves = [
          box(-width / 2, -height / 2, width * (share - 0.5), height / 2),
          box(width * (share - 0.5), -height / 2, width / 2, height / 2),
        ].map((half) =>
          half.map((p) =>
            affineApply(affineThen(affineRotate(angle), affineTranslate(centre.x, centre.y)), p),
          ),
        )
        const length = (polygon: Convex) =>
          segmentClip(segment, polygon).reduce((sum, s) => sum + segmentLength(s), 0)
        const whole = length(windowOf(window))
        const slack = segment.kind === 'cubic' ? 2e-3 * whole + 1e-6 : 1e-6
        assertNear(length(halves[0]!) + length(halves[1]!), whole, slack)
      },
    ),
  )
})

describe.each([0, 1, 2, 3])('the side of a ramp, turned by %d quarters', (quarters) => {
  const turn = affineRotate((quarters * Math.PI) / 2)
  const outline = pathTurned(sideOutline, turn)
  const turned = (polygon: Convex): Convex => polygon.map((p) => affineApply(turn, p))

  test('cut into tiles of 190 by 254 and put together again it has its whole length', () => {
    let sum = 0
    let ends = 0
    for (let x = -50; x < 1400; x += 190)
      for (let y = -50; y < 700; y += 254)
        for (const part of pathClip(outline, turned(box(x, y, x + 190, y + 254)))) {
          sum += pathLength(part)
          ends += 2
        }
    assertNear(sum, pathLength(sideOutline), 1e-6)
    // every crossing of a tile's edge ends one part and starts another
    expect(ends % 4).toBe(0)
  })

  test('a tile keeps the same parts as in the upright place', () => {
    for (const polygon of [box(0, 0, 190, 254), box(700, 400, 900, 700), box(-10, -10, 2000, 2000)]) {
      const [here, upright] = [pathClip(outline, turned(polygon)), pathClip(sideOutline, polygon)]
      expect(here.length).toBe(upright.length)
      here.forEach((part, i) => {
        assertNear(pathLength(part), pathLength(upright[i]!), 1e-6)
      })
    }
  })

  test('the length inside is what a walk finds', () => {
    for (const polygon of [box(-20, -20, 170, 234), box(600, 300, 1000, 700), box(1100, 50, 1400, 500)]) {
      const { length, step } = walkedLength(outline, turned(polygon), 20_000)
      expect(length).toBeGreaterThan(100)
      assertNear(total(pathClip(outline, turned(polygon))), length, 8 * step)
    }
  })
})

test('parts that follow one another stay joined: a corner inside a window is one path', () => {
  const parts = pathClip(rectangle(0, 0, 100, 100), box(50, 50, 150, 150))
  expect(parts).toHaveLength(1)
  expect(parts[0]!.pieces).toHaveLength(2)
  // the start of the outline is inside: its parts before and after are one
  const start = pathClip(rectangle(0, 0, 100, 100), box(-50, -50, 50, 50))
  expect(start).toHaveLength(1)
  expect([start[0]!.start, ...start[0]!.pieces.map((p) => p.to)]).toEqual([
    { x: 0, y: 50 },
    { x: 0, y: 0 },
    { x: 50, y: 0 },
  ])
})

test('convexContains holds the edge, and slack mm beyond it', () => {
  const polygon = box(0, 0, 10, 20)
  const inside = [
    [5, 5],
    [0, 0],
    [10, 20],
    [10, 3],
  ].map(([x, y]) => convexContains(polygon, { x: x!, y: y! }))
  expect(inside).toEqual([true, true, true, true])
  expect(convexContains(polygon, { x: 10.001, y: 3 })).toBe(false)
  expect(convexContains(polygon, { x: 10.001, y: 3 }, 0.002)).toBe(true)
  expect(convexContains(polygon, { x: 10.003, y: 3 }, 0.002)).toBe(false)
})

describe('what a polygon cuts away', () => {
  test('is with what is left the whole line, and no part of what is left lies inside', () => {
    let cut = 0
    for (let i = 0; i < 200; i++) {
      const at = (k: number): number => 60 * Math.sin(12.9898 * (7 * i + k))
      const path =
        i % 2 === 0
          ? circle({ x: at(1), y: at(2) }, 20 + Math.abs(at(3)))
          : pathOf({ x: at(1), y: at(2) }, { x: at(3), y: at(4) }, { x: at(5), y: at(6) })
      const polygon = box(-30, -20, 25, 35)
      const [inside, outside] = [pathClip(path, polygon), pathOutside(path, polygon)]
      const sum = (paths: typeof inside): number => paths.reduce((all, part) => all + pathLength(part), 0)
      assertNear(sum(inside) + sum(outside), pathLength(path), 1e-6)
      for (const part of outside)
        for (const p of pathSample(part, 1).slice(1, -1)) hold(!convexContains(polygon, p, -1e-6))
      if (inside.length > 0 && outside.length > 0) cut++
    }
    expect(cut).toBeGreaterThan(60)
  })
})
