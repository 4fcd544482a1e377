import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { type Path, pathSegments } from '../../../src/geometry/path.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { above, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import {
  copingOf,
  notch,
  piped,
  plain,
  reveals,
  sawn,
  sawnSeed,
  sawnWithPipe,
  sideOf,
  transitionOf,
} from '../ramps.ts'

/** Twice the area by the shoelace, halved: positive counter-clockwise. */
const shoelace = (points: readonly Point[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!
    return sum + p.x * q.y - q.x * p.y
  }, 0) / 2

/** `count` points of each piece, lines and arcs by their own closed forms. */
const sample = (path: Path, count: number): readonly Point[] =>
  pathSegments(path).flatMap((segment) =>
    Array.from({ length: count }, (_, i): Point => {
      const t = i / count
      if (segment.kind === 'arc') {
        const angle = segment.startAngle + segment.sweep * t
        return {
          x: segment.centre.x + segment.radius * Math.cos(angle),
          y: segment.centre.y + segment.radius * Math.sin(angle),
        }
      }
      return {
        x: segment.from.x + (segment.to.x - segment.from.x) * t,
        y: segment.from.y + (segment.to.y - segment.from.y) * t,
      }
    }),
  )

/** Area of a side without a notch: its rectangle less what lies over the curve, and less the chamfer's triangle. */
const closedArea = (design: QuarterDesign): number => {
  const { radius, centre, run, heights } = transitionOf(design)
  const R = radius.frame
  /** integral of √(R² − u²) */
  const under = (u: number): number => (u * Math.sqrt(R * R - u * u) + R * R * Math.asin(u / R)) / 2
  const curve = centre.y * run - (under(run - centre.x) - under(-centre.x))
  return curve + design.back.value * heights.frame - design.chamfer ** 2 / 2
}

const crosses = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const turn = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}

/** Whether two pieces of a closed line cross, by its corners. */
const crossesItself = (points: readonly Point[]): boolean =>
  points.some((a, i) => {
    const b = points[(i + 1) % points.length]!
    return points.some((c, k) => {
      const apart = Math.abs(i - k)
      return (
        k > i && apart > 1 && apart < points.length - 1 && crosses(a, b, c, points[(k + 1) % points.length]!)
      )
    })
  })

describe('the cut line of a side, for any ramp without a stop', () => {
  test('is closed: each edge starts, to the bit, where the one before ends', () => {
    fc.assert(
      fc.property(sawn, (design) => {
        const { edges, outline } = sideOf(design)
        edges.forEach(({ path }, i) => {
          const end = path.pieces.at(-1)!.to
          const next = edges[(i + 1) % edges.length]!.path.start
          hold(Object.is(end.x, next.x) && Object.is(end.y, next.y))
        })
        hold(outline.closed)
        expect(outline.pieces.at(-1)!.to).toEqual(outline.start)
        expect(outline.start).toEqual({ x: 0, y: 0 })
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })

  test('goes round its wood counter-clockwise, and never crosses itself', () => {
    fc.assert(
      fc.property(sawn, (design) => {
        const points = sample(sideOf(design).outline, 24)
        above(shoelace(points), 0)
        hold(!crossesItself(points))
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })

  test('fits its stated length and height', () => {
    fc.assert(
      fc.property(sawn, (design) => {
        const side = sideOf(design)
        const points = sample(side.outline, 40)
        assertNear(Math.max(...points.map((p) => p.x)), side.length, 1e-9, 'length')
        assertNear(Math.max(...points.map((p) => p.y)), side.height, 1e-9, 'height')
        above(Math.min(...points.map((p) => p.x)), -1e-9)
        above(Math.min(...points.map((p) => p.y)), -1e-9)
      }),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
  })
})

test('the test for crossings finds one', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 1, y: 1 },
    { x: 0, y: 1 },
  ]
  expect(crossesItself(square)).toBe(false)
  expect(crossesItself([square[0]!, square[2]!, square[1]!, square[3]!])).toBe(true)
})

test('the area is that of the rectangle less the segment over the curve, the chamfer and the notch', () => {
  const area = (design: QuarterDesign): number => shoelace(sample(sideOf(design).outline, 20_000))
  const design = { ...plain, chamfer: 120 }
  assertNear(area(design), closedArea(design), 1, 'mm² without a notch')
  // a square notch takes away what lies over its floor, between the curve and its wall
  const notched = { ...design, coping: piped({ by: notch(48, 33) }) }
  const { centre, radius, lip, heights } = transitionOf(design)
  const floor = heights.frame - 33
  const [from, to] = [Math.sqrt(radius.frame ** 2 - (centre.y - floor) ** 2), lip.x - centre.x]
  const steps = 20_000
  let over = 0
  for (let i = 0; i < steps; i++) {
    const u = from + ((to - from) * (i + 0.5)) / steps
    over += ((centre.y - Math.sqrt(radius.frame ** 2 - u * u) - floor) * (to - from)) / steps
  }
  assertNear(area(notched), closedArea(design) - over - 48 * 33, 1, 'mm² with a notch')
})

describe('edges', () => {
  const names = (design: QuarterDesign) => sideOf(design).edges.map(({ name }) => name)
  test('stand in the order of the way round; a feathered toe and an uncut corner have none', () => {
    expect(names({ ...plain, chamfer: 120, coping: piped() })).toEqual([
      'bottom',
      'chamfer',
      'back',
      'top',
      'notch',
      'curve',
      'toe',
    ])
    expect(names({ ...plain, toe: 0 })).toEqual(['bottom', 'back', 'top', 'curve'])
  })

  test('the curve is one arc of the frame, from the toe up to the lip or the notch', () => {
    const { radius, centre, lip } = transitionOf(plain)
    for (const coping of [null, piped(), piped({ seat: 'round' })]) {
      const { edges } = sideOf({ ...plain, coping })
      const curve = pathSegments(edges.find((e) => e.name === 'curve')!.path)
      expect(curve.map((segment) => segment.kind)).toEqual(['arc'])
      const [arc] = curve
      if (arc?.kind !== 'arc') throw new Error('no arc')
      assertNear(arc.radius, radius.frame, 1e-9, 'radius')
      expect(arc.centre).toEqual(centre)
      expect(arc.to).toEqual({ x: 0, y: 40 })
      if (!coping) expect(arc.from).toEqual(lip)
      else expect(arc.from.y).toBeLessThan(lip.y)
    }
  })
})

describe('the seat of the pipe', () => {
  const edgeOf = (design: QuarterDesign, name: string) =>
    pathSegments(sideOf(design).edges.find((e) => e.name === name)!.path)

  test('square: the pipe touches floor and wall, the floor runs out to the curve', () => {
    const design = { ...plain, coping: piped() }
    const { centre } = copingOf(design)
    const [wall, floor, ...rest] = edgeOf(design, 'notch')
    expect(rest).toEqual([])
    expect(wall!.from.x).toBe(wall!.to.x)
    expect(floor!.from.y).toBe(floor!.to.y)
    assertNear(wall!.from.x - centre.x, 30.15, 1e-9, 'wall beside the pipe')
    assertNear(centre.y - floor!.from.y, 30.15, 1e-9, 'floor under the pipe')
    assertNear(wall!.from.y, 640, 1e-9, 'wall up to the top line')
    const { centre: c, radius } = transitionOf(design)
    assertNear(
      Math.hypot(floor!.to.x - c.x, floor!.to.y - c.y),
      radius.frame,
      1e-9,
      'floor ends on the curve',
    )
    expect(floor!.to.x).toBeLessThan(centre.x)
  })

  test('round: the pipe lies in the arc, from the curve to its back, then straight up', () => {
    const design = { ...plain, coping: piped({ seat: 'round' }) }
    const { centre } = copingOf(design)
    const [wall, arc, ...rest] = edgeOf(design, 'notch')
    expect(rest).toEqual([])
    if (arc?.kind !== 'arc') throw new Error('no arc')
    expect(arc.centre).toEqual(centre)
    assertNear(arc.radius, 30.15, 1e-9, 'radius of the pipe')
    expect(arc.sweep).toBeLessThan(-Math.PI / 2)
    expect(arc.sweep).toBeGreaterThan(-Math.PI)
    assertNear(arc.from.x - centre.x, 30.15, 1e-9, 'back of the pipe, x')
    assertNear(arc.from.y, centre.y, 1e-9, 'back of the pipe, y')
    assertNear(wall!.from.x, arc.from.x, 1e-9, 'wall upright')
    const { centre: c, radius } = transitionOf(design)
    assertNear(Math.hypot(arc.to.x - c.x, arc.to.y - c.y), radius.frame, 1e-9, 'mouth on the curve')
    assertNear(Math.hypot(arc.to.x - centre.x, arc.to.y - centre.y), 30.15, 1e-9, 'mouth on the pipe')
  })

  test('round and shallow: the arc is cut off by the top line', () => {
    const design = { ...plain, coping: piped({ seat: 'round', by: notch(44, 20) }) }
    const { centre } = copingOf(design)
    const [arc, ...rest] = edgeOf(design, 'notch')
    expect(rest).toEqual([])
    if (arc?.kind !== 'arc') throw new Error('no arc')
    expect(centre.y).toBeGreaterThan(640)
    assertNear(arc.from.y, 640, 1e-9, 'starts on the top line')
    assertNear(Math.hypot(arc.from.x - centre.x, arc.from.y - centre.y), 30.15, 1e-9, 'on the pipe')
  })
})

describe('reveals and notch say the same pipe', () => {
  test('either fed back as the other gives the same', () => {
    fc.assert(
      fc.property(sawnWithPipe, (design) => {
        const first = copingOf(design)
        const { outside, seat, up, out, along, down } = first
        for (const by of [reveals(up, out), notch(along, down)]) {
          const again = copingOf({ ...design, coping: piped({ outside, seat, by }) })
          for (const key of ['up', 'out', 'along', 'down'] as const)
            assertNear(again[key], first[key], 1e-6, `${key} by ${by.kind}`)
          assertNear(again.centre.x, first.centre.x, 1e-6, 'centre x')
          assertNear(again.centre.y, first.centre.y, 1e-6, 'centre y')
        }
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })

  test('`up` is over the deck board and `out` is square to the ridden face, by measuring both', () => {
    fc.assert(
      fc.property(sawnWithPipe, (design) => {
        const { up, out, centre, outside, along, down } = copingOf(design)
        const t = transitionOf(design)
        assertNear(centre.y + outside / 2 - t.heights.deck, up, 1e-9, 'up')
        // pipe's far side from the wood, on the line to the centre of the curve, against the ridden face
        const far = Math.hypot(centre.x - t.centre.x, centre.y - t.centre.y) - outside / 2
        assertNear(t.radius.surface - far, out, 1e-6, 'out')
        assertNear(centre.x + outside / 2 - t.lip.x, along, 1e-9, 'along')
        assertNear(t.heights.frame - (centre.y - outside / 2), down, 1e-9, 'down')
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
  })
})
