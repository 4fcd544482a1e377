import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { pathCentroid } from '../../../src/geometry/centroid.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { balance } from '../../../src/ramp/hazard/balance.ts'
import { assertNear } from '../../support/near.ts'
import { circleOf, piped, plain, plywood, reveals, said, solve } from '../ramps.ts'
import { weighed } from './weighed.ts'

const low: QuarterDesign = { ...plain, chamfer: 300 }
const tall: QuarterDesign = {
  ...plain,
  height: { layer: 'frame', value: 1400 },
  transition: circleOf('surface', 1500),
  back: { from: 'deck', value: 1500 },
  skin: [plywood(9), plywood(9)],
  // none takes a twin
  studs: { ...plain.studs, section: [45, 89] },
  deckBoard: null,
  chamfer: 1000,
}
const withPipe: QuarterDesign = {
  ...plain,
  coping: piped({}, reveals(8, 6)),
  sides: { thickness: 18, count: 3 },
}

const of = (design: QuarterDesign) => {
  const { ramp } = solve(design)
  const { transition, side, coping, studs, deckTimbers, skin } = ramp
  return balance(design, {
    transition: transition!,
    side: side!,
    coping,
    studs,
    deckTimbers,
    skin,
    stored: [],
  })
}

describe.each([
  ['low', low],
  ['tall', tall],
  ['with a pipe and a rib', withPipe],
])('how a ramp stands: %s', (_, design) => {
  test('its weight and its middle are those of polygons', () => {
    const parts = weighed(design, solve(design).ramp)
    const mass = parts.reduce((sum, { density, volume }) => sum + (density.usual * volume) / 1e9, 0)
    const x = parts.reduce((sum, p) => sum + (p.density.usual * p.volume * p.x) / 1e9, 0) / mass
    const found = of(design)
    assertNear(found.middle, x, 0.05)
    const foot = solve(design).ramp.side!.length - design.chamfer
    assertNear(found.foot, foot, 1e-9)
    // each part at the worse end of its range
    const worst = parts.reduce((sum, p) => {
      const arm = foot - p.x
      return sum + Math.min(p.density.least * arm, p.density.most * arm) * (p.volume / 1e9)
    }, 0)
    // a pipe of one weight here has a range there of its own material: a percent of a few kg
    assertNear(found.alone / worst, 1, 0.004)
    assertNear(found.standing, found.alone - 80 * design.chamfer, 1e-6)
  })

  test('a rider who rolls up it presses and tips as a point that is rolled step by step', () => {
    const { transition, side } = solve(design).ramp
    const { centre, radius, lipAngle, toeAngle } = transition!
    const foot = side!.length - design.chamfer
    // from rest at the lip downward: the same forces as on the way up
    const [g, r, m, dt] = [9810, radius.surface, 80, 1e-4]
    let [angle, speed] = [lipAngle, 0]
    const track: Point[] = []
    while (angle > toeAngle) {
      track.push({ x: centre.x + r * Math.sin(angle), y: centre.y - r * Math.cos(angle) })
      speed -= (g / r) * Math.sin(angle) * dt
      angle += speed * dt
    }
    let [tip, share] = [Number.POSITIVE_INFINITY, 0]
    const found = of(design)
    for (let i = 1; i < track.length - 1; i++) {
      const [a, b, c] = [track[i - 1]!, track[i]!, track[i + 1]!]
      // what the face does to the rider, N / 1000; the rider does the reverse to the face
      const fx = (m * (a.x - 2 * b.x + c.x)) / dt ** 2
      const fy = (m * (a.y - 2 * b.y + c.y)) / dt ** 2 + m * g
      const [back, down] = [-fx / g, fy / g]
      tip = Math.min(tip, found.alone + down * (foot - b.x) - back * b.y)
      share = Math.max(share, back / (down + found.least))
    }
    assertNear(found.rolling / tip, 1, 0.01)
    assertNear(found.push.share, share, 0.005)
  })

  test('its greatest push is that of a fine scan of the slope, by closed form on a circle', () => {
    // back = m g sin θ (2 y / R + cos θ), y = R (cos θ − cos lip): m g sin θ (3 cos θ − 2 cos lip)
    const { lipAngle, toeAngle } = solve(design).ramp.transition!
    let most = 0
    for (let i = 0; i <= 100_000; i++) {
      const slope = toeAngle + ((lipAngle - toeAngle) * i) / 100_000
      most = Math.max(most, 80 * 9.81 * Math.sin(slope) * (3 * Math.cos(slope) - 2 * Math.cos(lipAngle)))
    }
    assertNear(of(design).push.force, most, 0.002 * most)
  })
})

test('the middle of a side alone is that of another reckoning of the same panel', () => {
  // 1363 behind the toe on a foot of 1200: reckoned elsewhere for this panel
  const { side } = solve({ ...tall, chamfer: 1399 }).ramp
  assertNear(pathCentroid(side!.outline).centre.x, 1363, 0.5)
})

describe('what is said of it', () => {
  const levels = (design: QuarterDesign): readonly string[] =>
    solve(design).drafts.flatMap(({ id, level }) => (id === 'tips' ? [level] : []))
  test('a foot that ends before the middle is a stop, a foot that a rider tips over is a warning', () => {
    const boarded = { ...tall, deckBoard: plywood(15) }
    // the middle moves little with the chamfer: look for where the foot passes it
    let [stands, falls] = [1000, 1399]
    while (falls - stands > 1e-6) {
      const leg = (stands + falls) / 2
      const { middle, foot } = of({ ...boarded, chamfer: leg })
      if (middle < foot) stands = leg
      else falls = leg
    }
    expect(levels({ ...boarded, chamfer: stands - 0.01 })).toEqual(['warn'])
    expect(levels({ ...boarded, chamfer: falls + 0.01 })).toEqual(['stop'])
    expect(said({ ...boarded, chamfer: 1399 }, 'tips').join()).toMatch(
      /^stop: it falls over by itself: its foot ends 1200 mm behind the toe, its middle lies 12\d\d mm behind it; a chamfer of \d+ mm or less$/,
    )
  })
  test('the chamfer that is offered is the largest with which no rider tips it', () => {
    const leg = Number(
      /a chamfer of (\d+) mm or less/.exec(said({ ...tall, chamfer: 1000 }, 'tips').join())![1],
    )
    expect(levels({ ...tall, chamfer: leg })).toEqual([])
    expect(levels({ ...tall, chamfer: leg + 1 })).toEqual(['warn'])
  })
  test('a light ramp is told to be tied down, a heavy one is not', () => {
    expect(
      said(
        { ...plain, runOut: { kind: 'sheet', sheet: { thickness: 1.5, material: 'steel' } } },
        'pushed-back',
      ).join(),
    ).toMatch(
      /at its lightest, \d+ kg \(\d+ lb\) without its run-out and screws, it slides on a floor that holds less than 0\.\d\d of the load on it; tie it down/,
    )
    expect(said({ ...plain, runOut: { kind: 'none' } }, 'pushed-back').join()).toContain(
      ' lb) without screws, ',
    )
    expect(said({ ...plain, width: 6000, sides: { thickness: 18, count: 6 } }, 'pushed-back')).toEqual([])
  })
})
