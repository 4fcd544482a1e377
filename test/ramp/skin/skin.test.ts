import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { above, atMost } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import {
  circleOf,
  notch,
  piped,
  plain,
  plywood,
  reveals,
  said,
  sawnSeed,
  sawnWithPipe,
  solve,
  transitionOf,
} from '../ramps.ts'

const gap = 2

/** Distance of a point from a straight piece. */
const fromSegment = (p: Point, a: Point, b: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y)
}

/**
 * The length of a layer by walking up the curve: square ends are laid through the band, one after the other, until one comes
 * nearer to the pipe than the gap; its angle on the circle tells the length of the layer's middle.
 */
const walked = (design: QuarterDesign, below: number, thickness: number, step: number): number => {
  const t = transitionOf(design)
  const pipe = solve(design).ramp.coping
  const at = (angle: number, into: number): Point => ({
    x: t.centre.x + (t.radius.frame - into) * Math.sin(angle),
    y: t.centre.y - (t.radius.frame - into) * Math.cos(angle),
  })
  const middle = t.radius.frame - below - thickness / 2
  let angle = t.toeAngle
  while (pipe && angle <= t.lipAngle) {
    const near = fromSegment(pipe.centre, at(angle, below), at(angle, below + thickness)) - pipe.outside / 2
    if (near < gap) break
    angle += step / t.radius.frame
  }
  return middle * ((pipe ? Math.min(angle, t.lipAngle) : t.lipAngle) - t.toeAngle)
}

const layers = (design: QuarterDesign) => solve(design).ramp.skin

describe('a layer of skin', () => {
  test('without a pipe is as long as the arc of its middle, toe to lip', () => {
    const { toeAngle, lipAngle, radius } = transitionOf(plain)
    // 9, 9 and 6 on the frame's curve: middles 4.5, 13.5 and 21 above it
    const expected = [4.5, 13.5, 21].map((above) => (radius.frame - above) * (lipAngle - toeAngle))
    layers(plain).forEach((layer, i) => {
      assertNear(layer.length, expected[i]!, 1e-9, `layer ${i + 1}`)
    })
    expect(layers(plain).map(({ layer, below }) => [layer, below])).toEqual([
      [1, 0],
      [2, 9],
      [3, 18],
    ])
  })

  test.each([
    ['a square seat', piped()],
    ['a round seat', piped({ seat: 'round' })],
    ['a pipe far out', piped({ by: reveals(12, 14) })],
    ['a pipe behind the face', piped({ by: reveals(2, -12) })],
    ['a pipe over the top line', piped({ by: notch(48, 14) })],
  ])('ends 2 mm before the pipe: %s', (_, coping) => {
    const design = { ...plain, coping }
    layers(design).forEach(({ below, sheet, length }, i) => {
      assertNear(length, walked(design, below, sheet.thickness, 0.002), 0.003, `layer ${i + 1}`)
    })
  })

  test('is cut at the lip where the pipe never comes near', () => {
    // far behind the lip: a long notch
    const design = { ...plain, coping: piped({ outside: 30, by: notch(110, 10) }) }
    const { lipAngle, toeAngle, radius } = transitionOf(design)
    const [first] = layers(design)
    assertNear(first!.length, (radius.frame - 4.5) * (lipAngle - toeAngle), 1e-9)
  })

  test('never touches the pipe and never passes the lip, on any ramp', () => {
    fc.assert(
      fc.property(sawnWithPipe, (design) => {
        const { coping, transition, skin } = solve(design).ramp
        const { curve } = transition!
        for (const { below, sheet, end, length } of skin) {
          atMost(end, curve.lip)
          if (length === 0) continue
          const [lower, upper] = [curve.offset(below), curve.offset(below + sheet.thickness)]
          for (let i = 0; i <= 200; i++) {
            const place = curve.toe + ((end - curve.toe) * i) / 200
            const near = fromSegment(coping!.centre, lower.point(place), upper.point(place))
            above(near - coping!.outside / 2, gap - 1e-6)
          }
        }
      }),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
  })

  test('a pipe as large as the ramp leaves no room: length 0 and a warning, no crash', () => {
    const design: QuarterDesign = {
      ...plain,
      height: { layer: 'frame', value: 100 },
      toe: 60,
      transition: {
        circle: { layer: 'frame', radius: 300 },
        tangent: { layer: 'frame', height: 0 },
      },
      skin: [plywood(18), plywood(6.35)],
      deckBoard: null,
      coping: piped({ outside: 118, by: reveals(0, 0) }),
    }
    const { ramp, drafts } = solve(design)
    expect(ramp.skin.map((layer) => layer.length)).toContain(0)
    expect(drafts.map((f) => f.id)).toContain('skin-none')
  })
})

test('marks lie where the normals through the studs meet the middle of the layer', () => {
  const design = { ...plain, coping: piped() }
  const { studs, skin, transition } = solve(design).ramp
  const { radius, centre, toeAngle } = transition!
  for (const { below, sheet, marks, length } of skin) {
    const middle = radius.frame - below - sheet.thickness / 2
    const expected = studs
      // slope of the curve at the stud, from its own place in the plane
      .map((stud) => middle * (Math.atan2(stud.x - centre.x, centre.y - stud.y) - toeAngle))
      .filter((mark) => mark <= length)
    expect(marks.length).toBe(expected.length)
    expect(marks.length).toBeGreaterThan(3)
    marks.forEach((mark, i) => {
      assertNear(mark, expected[i]!, 1e-6, `mark ${i + 1}`)
    })
  }
})

describe('layers stepped back at the toe', () => {
  const stepped = (back: number, more: Partial<QuarterDesign> = {}): QuarterDesign => ({
    ...plain,
    ...more,
    runOut: { kind: 'stepped', back },
  })
  test('each starts its step behind the one below, and is so much shorter; its marks move with its end', () => {
    const [whole, cut] = [solve(plain).ramp, solve(stepped(20)).ramp]
    cut.skin.forEach((layer, i) => {
      assertNear(layer.length, whole.skin[i]!.length - 20 * i, 1e-6, `layer ${i + 1}`)
      layer.marks.forEach((mark, k) => {
        assertNear(mark, whole.skin[i]!.marks[k]! - 20 * i, 1e-6, `mark ${k + 1}`)
      })
      // the rows of screws are where they were on the studs
      cut.skin[i]!.rows.slice(1).forEach((row, k) => {
        assertNear(row.place, whole.skin[i]!.rows[k + 1]!.place, 1e-9, 'place (radians)')
        assertNear(row.at, whole.skin[i]!.rows[k + 1]!.at - 20 * i, 1e-6, 'row')
      })
    })
  })
  test('every row of screws still meets its stud, at the toe end too', () => {
    for (const back of [5, 12, 20, 22]) {
      const { ramp } = solve(stepped(back))
      ramp.skin.forEach((plan, i) => {
        const middle = ramp.transition!.radius.frame - plan.below - plan.sheet.thickness / 2
        for (const row of plan.rows) {
          const along = ((row.at + back * i) * ramp.transition!.radius.frame) / middle
          const stud = ramp.studs[row.stud!]!
          expect(Math.abs(along - stud.at)).toBeLessThanOrEqual(stud.width / 2)
        }
        expect(plan.rows).toHaveLength(ramp.studs.length)
      })
    }
  })
  test('may start at the middle of the first stud and not behind it', () => {
    const [stud] = solve(plain).ramp.studs
    // the third layer lies 21 mm inside the frame; two steps to it
    const most = (stud!.at * (1724 - 21)) / 1724 / 2
    expect(said(stepped(most - 0.01), 'step-back')).toEqual([])
    expect(said(stepped(most + 1), 'step-back')).toEqual([
      `stop: layer 3 starts 2 mm behind the middle of the first stud, with too little wood under its end; \`step-back\` may be at most ${Math.floor(most)} mm`,
    ])
    expect(said(stepped(Math.floor(most)), 'step-back')).toEqual([])
  })
  test('rise at the toe by the lowest face over the floor and one thickness after the other', () => {
    // a frame that runs out level at the floor, no toe: each step is a sheet
    const low = { transition: circleOf('frame', 1724, 'frame'), toe: 0, skin: [5, 4, 3].map(plywood) }
    expect(said(stepped(10, low), 'toe-step')).toEqual([
      'note: the skin rises at the toe in steps of 5, 4 and 3 mm',
    ])
    // 40 up: cos a0 = 1660/1724 about a centre 1700 up; 1700 − (1724 − 9) · 1660/1724 = 48.7; the sheet bridges
    // 1700 · acos(1660/1724) = 464.7, 50 laps on the skin, 75 lies on the floor: 589.7
    expect(said(stepped(10), 'toe-step')).toEqual([
      'warn: the skin rises at the toe in steps of 48.7, 9 and 6 mm, a wheel stops at more than 6 mm; take thinner layers and a lower toe, ' +
        'or say what closes it (run-out: { sheet: 1.5 steel }), cut 590 mm long',
    ])
  })
})
