import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import type { Stud } from '../../../src/ramp/frame/stud.ts'
import { timberCorners } from '../../../src/ramp/frame/timber.ts'
import { above, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { ringOf, ringRows } from '../../support/ring.ts'
import { bare, circleOf, piped, plain, said, sawn, sawnSeed, solve, studded, transitionOf } from '../ramps.ts'

/** Corners of a stud by its own numbers: face on the curve's tangent, depth square to it into the wood. */
const corners = (x: number, y: number, angle: number, width: number, depth: number): readonly Point[] =>
  [
    [width / 2, 0],
    [-width / 2, 0],
    [-width / 2, depth],
    [width / 2, depth],
  ].map(([along, into]) => ({
    x: x + along! * Math.cos(angle) + into! * Math.sin(angle),
    y: y + along! * Math.sin(angle) - into! * Math.cos(angle),
  }))

const onCircle = (
  design: QuarterDesign,
  at: number,
): { readonly x: number; readonly y: number; readonly angle: number } => {
  const { centre, radius, toeAngle } = transitionOf(design)
  const angle = toeAngle + at / radius.frame
  return {
    x: centre.x + radius.frame * Math.sin(angle),
    y: centre.y - radius.frame * Math.cos(angle),
    angle,
  }
}

/** How far up the curve it is `x` behind the toe. */
const arcTo = (design: QuarterDesign, x: number): number => {
  const { centre, radius, toeAngle } = transitionOf(design)
  return radius.frame * (Math.asin((x - centre.x) / radius.frame) - toeAngle)
}

/** Least `at` whose flat stud sticks out neither in front nor below: tried in steps of a hundredth. */
const leastAt = (design: QuarterDesign, width: number, depth: number): number => {
  for (let at = 0; at < 400; at += 0.01) {
    const { x, y, angle } = onCircle(design, at)
    if (corners(x, y, angle, width, depth).every((p) => p.x >= 0 && p.y >= 0)) return at
  }
  throw new Error('no stud fits at all')
}

const studs = (design: QuarterDesign): readonly Stud[] => solve(design).ramp.studs

test('studs lie on the curve at their length along it, turned with it', () => {
  for (const stud of studs(plain)) {
    const { x, y, angle } = onCircle(plain, stud.at)
    assertNear(stud.x, x, 1e-9, 'x')
    assertNear(stud.y, y, 1e-9, 'y')
    assertNear(stud.angle, angle, 1e-12, 'angle (radians)')
    timberCorners(stud).forEach((p, i) => {
      const own = corners(x, y, angle, stud.width, stud.depth)[i]!
      assertNear(Math.hypot(p.x - own.x, p.y - own.y), 0, 1e-9, `corner ${i}`)
    })
  }
})

describe('the first stud', () => {
  test('lies flat, flush with the toe', () => {
    const [first] = studs(plain)
    expect([first!.lies, first!.role, first!.width, first!.depth]).toEqual(['flat', 'toe', 89, 38])
    assertNear(first!.at, leastAt(plain, 89, 38), 0.011, 'least place')
    assertNear(Math.min(...timberCorners(first!).map((p) => p.x)), 0, 1e-9, 'flush')
    expect(said(plain, 'stud-toe')).toEqual([])
  })

  test('is moved up by the least amount that fits under a low toe, and says so', () => {
    const low = { ...plain, toe: 34 }
    const [first] = studs(low)
    const flush = 89 / 2
    const least = leastAt(low, 89, 38)
    expect(least).toBeGreaterThan(flush + 5)
    assertNear(first!.at, least, 0.011, 'least place')
    expect([first!.lies, first!.depth]).toEqual(['flat', 38])
    expect(said(low, 'stud-toe').join()).toMatch(
      /^note: the first stud does not fit flush with the toe; it lies \d+(\.\d)? mm further up$/,
    )
  })

  test('is ripped where no place up to half a step fits', () => {
    // level at the floor and a toe of 20: the curve rises too slowly
    const low = bare(3000, 640, 20)
    const [first] = studs(low)
    expect(first!.lies).toBe('flat')
    expect(first!.depth).toBeLessThan(38)
    // the thickest strip that fits, tried in hundredths
    const { x, y, angle } = onCircle(low, first!.at)
    let depth = 0
    while (corners(x, y, angle, 89, depth + 0.01).every((p) => p.x >= -1e-6 && p.y >= 0)) depth += 0.01
    assertNear(first!.depth, depth, 0.011, 'ripped to')
    const [message] = said(low, 'stud-toe')
    const found =
      /^note: the first stud is ripped to ([\d.]+) mm thick to lie in the toe; one of the full section fits from (\d+) mm behind the toe$/.exec(
        message!,
      )!
    assertNear(Number(found[1]), first!.depth, 0.05)
    // there, and not a millimetre before
    const lowest = (behind: number): number => {
      const foot = onCircle(low, arcTo(low, behind))
      return Math.min(...corners(foot.x, foot.y, foot.angle, 89, 38).map((p) => p.y))
    }
    expect(lowest(Number(found[2]))).toBeGreaterThan(-1e-6)
    expect(lowest(Number(found[2]) - 1.001)).toBeLessThan(0)
  })

  test('is left out of a toe too thin for it, with the toe that would take one', () => {
    const thin = bare(3000, 640, 6)
    expect(studs(thin).filter((stud) => stud.role === 'toe')).toEqual([])
    const [message] = said(thin, 'stud-toe')
    const offered = Number(
      /^warn: no stud fits in the toe; a toe of (\d+) mm takes one laid flat$/.exec(message!)![1],
    )
    expect(said({ ...thin, toe: offered }, 'stud-toe').filter((m) => m.startsWith('warn'))).toEqual([])
  })
})

test('the others stand on edge at multiples of `every` from the toe corner', () => {
  const design = { ...plain, studs: studded({ every: 187.5 }) }
  const others = studs(design).filter((stud) => stud.role === 'curve')
  const { arc } = transitionOf(design)
  // the last multiple whose stud ends before the lip
  const count = Math.floor((arc - 19) / 187.5)
  expect(count).toBeGreaterThan(4)
  expect(others.length).toBe(count)
  others.forEach((stud, i) => {
    assertNear(stud.at, (i + 1) * 187.5, 1e-9, `stud ${i + 2}`)
    expect([stud.width, stud.depth]).toEqual(stud.lies === 'edge' ? [38, 89] : [89, 38])
  })
  expect(others.at(-1)!.lies).toBe('edge')
})

test('where the panel is too shallow for a stud on edge it lies flat, and is noted', () => {
  const design = { ...bare(1724, 640, 40), studs: studded({ every: 140 }) }
  const second = studs(design)[1]!
  assertNear(second.at, 140, 1e-9, 'place')
  // 140 up the curve its foot, 89 deep on edge, would come out below the floor
  const { x, y, angle } = onCircle(design, 140)
  expect(Math.min(...corners(x, y, angle, 38, 89).map((p) => p.y))).toBeLessThan(0)
  expect(second.lies).toBe('flat')
  const found =
    /^note: too deep to stand on edge where the panel is thin, so flat: the stud 140 mm up the curve \(or on edge, ripped to (\d+) mm\); one of the full section fits on edge from (\d+) mm behind the toe$/.exec(
      said(design, 'stud-outside')[0]!,
    )!
  const [ripped, behind] = [Number(found[1]), Number(found[2])]
  // ripped to what is said it stays in the panel, a millimetre deeper it does not
  expect(Math.min(...corners(x, y, angle, 38, ripped).map((p) => p.y))).toBeGreaterThan(-1e-6)
  expect(Math.min(...corners(x, y, angle, 38, ripped + 1.001).map((p) => p.y))).toBeLessThan(0)
  // the place named is the first whole millimetre where a stud on edge stays above the floor
  const low = (x: number): number => {
    const at = arcTo(design, x)
    const foot = onCircle(design, at)
    return Math.min(...corners(foot.x, foot.y, foot.angle, 38, 89).map((p) => p.y))
  }
  expect(low(behind)).toBeGreaterThan(-1e-6)
  expect(low(behind - 1.001)).toBeLessThan(0)
})

describe('no stud, on any ramp without a stop,', () => {
  test('leaves the panel or reaches into the pipe', () => {
    fc.assert(
      fc.property(sawn, (design) => {
        const { side, studs: all, coping } = solve(design).ramp
        const holds = ringRows(ringOf(pathSample(side!.outline, 2).map(({ x, y }) => [x, y])))
        for (const stud of all) {
          const own = timberCorners(stud)
          own.forEach((p, i) => {
            const q = own[(i + 1) % 4]!
            for (let k = 0; k < 12; k++) {
              const at = { x: p.x + ((q.x - p.x) * k) / 12, y: p.y + ((q.y - p.y) * k) / 12 }
              // the middle of the skin face lies on the cut line itself
              const out = holds(at.x, at.y) ? 0 : pathDistance(side!.outline, at)
              below(out, 1e-3)
              if (coping && at.y > coping.centre.y - coping.outside / 2 + 1e-3)
                above(Math.hypot(at.x - coping.centre.x, at.y - coping.centre.y), coping.outside / 2 - 1e-3)
            }
          })
        }
      }),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
  })

  test('overlaps the next; between toe and lip they stand at multiples of `every`, or are said to be moved', () => {
    fc.assert(
      fc.property(sawn, (design) => {
        const all = studs(design)
        all.forEach((stud, i) => {
          const before = all[i - 1]
          if (before) expect(stud.at - stud.width / 2).toBeGreaterThan(before.at + before.width / 2 - 1e-6)
          if (stud.role === 'curve') {
            const off = stud.at - Math.round(stud.at / design.studs.every) * design.studs.every
            expect(Math.abs(off)).toBeLessThanOrEqual(design.studs.every / 2 + 1e-9)
            if (Math.abs(off) > 1e-9)
              expect(said(design, 'stud-outside').join()).toContain('moved along the curve')
          } else if (stud.role !== 'seam') expect(i).toBe(stud.role === 'toe' ? 0 : all.length - 1)
        })
      }),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
  })
})

test('studs keep clear of a chamfer', () => {
  const design: QuarterDesign = {
    ...plain,
    coping: piped(),
    back: { from: 'deck', value: 110 },
    studs: studded({ section: [38, 140], every: 100 }),
    chamfer: 600,
  }
  const { ramp, drafts } = solve(design)
  // where the cut leaves no place within half a spacing, that is said, and no such stud is drawn
  // what so deep a cut does to the side itself is no matter of studs
  const ofStuds = drafts.filter((f) => f.level === 'stop' && !['wood-narrow', 'tips'].includes(f.id))
  expect(ofStuds.every((f) => f.id === 'stud-outside')).toBe(true)
  const beyond = (stud: Stud): number =>
    Math.max(...timberCorners(stud).map((p) => p.x - p.y - (ramp.length! - 600)))
  expect(ramp.studs.length).toBeGreaterThan(2)
  for (const stud of ramp.studs) expect(beyond(stud)).toBeLessThan(1e-6)
  // the same studs without the cut reach past it
  expect(Math.max(...studs({ ...design, chamfer: 0 }).map(beyond))).toBeGreaterThan(0)
})

test('closer studs at the foot leave no gap wider than the wide spacing where they end', () => {
  // close ones end at 290, 30 below the next that the wide spacing would put behind 420
  const middles = studs({ ...plain, studs: studded({ every: 200, foot: { every: 145, to: 420 } }) })
    .filter(({ role }) => role === 'curve')
    .map(({ at }) => at)
  expect(middles).toEqual([145, 290, 400, 600, 800])
  // one of the wide spacing that would meet the last close one is that one
  const met = studs({ ...plain, studs: studded({ every: 200, foot: { every: 195, to: 220 } }) })
  expect(met.filter(({ role }) => role === 'curve').map(({ at }) => at)).toEqual([195, 400, 600, 800])
})

test('a stud without room stops only where the skin would span more than between two others', () => {
  const deepOnes = (toe: number, every: number): QuarterDesign => ({
    ...plain,
    height: { layer: 'frame', value: 700 },
    toe,
    studs: studded({ section: [38, 235], every }),
  })
  const seen = { carried: 0, stopped: 0 }
  for (let toe = 10; toe <= 60; toe += 5)
    for (let every = 90; every <= 260; every += 10) {
      const design = deepOnes(toe, every)
      const { ramp, findingsOf } = solve(design)
      const widest = (at: number): number => {
        const faces = ramp.studs.map((stud) => ({
          low: stud.at - stud.width / 2,
          high: stud.at + stud.width / 2,
          at: stud.at,
        }))
        const below = faces.filter((one) => one.at <= at).map(({ high }) => high)
        return Math.min(...faces.filter((one) => one.at > at).map(({ low }) => low)) - Math.max(...below)
      }
      for (const { level, message } of findingsOf('stud-outside')) {
        const carried = /no room for the studs? ([\d., and]+) mm/.exec(message)
        const lost = /takes the studs? ([\d., and]+) mm/.exec(message)
        if (!(carried ?? lost)) continue
        expect(level).toBe(carried ? 'note' : 'stop')
        for (const at of (carried ?? lost)![1]!.split(/, | and /).map(Number)) {
          seen[carried ? 'carried' : 'stopped']++
          if (carried) expect(widest(at)).toBeLessThanOrEqual(every - 38 + 1e-6)
          else expect(widest(at)).toBeGreaterThan(every - 38)
        }
      }
    }
  expect(seen.carried).toBeGreaterThan(10)
  expect(seen.stopped).toBeGreaterThan(3)
})

test('what no stud carries at the lip is said', () => {
  // from a curve of this file's own: flat studs of 235 leave no room for two
  const design: QuarterDesign = {
    ...plain,
    height: { layer: 'frame', value: 250 },
    transition: circleOf('frame', 800, 'frame', 0),
    toe: 25,
    studs: studded({ section: [38, 235], every: 240 }),
  }
  const { ramp, findingsOf } = solve(design)
  const [only] = ramp.studs
  expect(ramp.studs.length).toBe(1)
  // the arc from the toe to the lip: R (a1 − a0)
  const arc = 800 * (Math.acos(550 / 800) - Math.acos(775 / 800))
  const free = arc - (only!.at + 235 / 2)
  const said = findingsOf('stud-lip')[0]!
  assertNear(Number(/last ([\d.]+) mm hang free/.exec(said.message)![1]), free, 0.05 + 1e-9)
  // ripped as it offers, a second one carries it
  const depth = Number(/ripped to (\d+) mm deep/.exec(said.message)![1])
  expect(studs({ ...design, studs: studded({ section: [38, depth], every: 240 }) }).at(-1)!.role).toBe('lip')
})
