import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { QuarterDesign, Sheet } from '../../../src/design/design.ts'
import type { Draft } from '../../../src/ramp/check/check.ts'
import { above, atLeast, atMost } from '../../support/hold.ts'
import { circleOf, isFramed, piped, plain, plywood, reveals, solve, studded } from '../ramps.ts'
import { weighed } from './weighed.ts'
import { woodByPoints } from './wood-by-points.ts'

const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => min + ((max - min) * n) / 10_000)
const hardboard: Sheet = { thickness: 6, material: 'hardboard' }

/** Ramps as they are built and somewhat worse: low and high, with and without pipe, ribs and chamfer. */
const built: fc.Arbitrary<QuarterDesign> = fc
  .record({
    width: real(600, 2600),
    count: fc.integer({ min: 2, max: 5 }),
    height: real(300, 740),
    ratio: real(1.8, 3),
    toe: real(20, 70),
    deck: real(150, 900),
    every: real(130, 230),
    section: fc.constantFrom<readonly [number, number]>([38, 89], [45, 95], [38, 140]),
    skin: fc.constantFrom([plywood(9), plywood(9), hardboard], [plywood(9), plywood(9)]),
    board: fc.constantFrom(12, 15, 18),
    pipe: fc.constantFrom(null, 48.3, 60.3),
    chamfer: fc.option(real(40, 220)),
    ends: real(50, 300),
  })
  .map((r) => ({
    ...plain,
    width: r.width,
    sides: { thickness: 18, count: r.count },
    height: { layer: 'frame', value: r.height },
    transition: circleOf('frame', Math.max(960, r.height * r.ratio)),
    toe: r.toe,
    back: { from: 'deck', value: r.deck },
    studs: studded({ every: r.every, section: r.section }),
    skin: r.skin,
    deckBoard: plywood(r.board),
    coping:
      r.pipe === null
        ? null
        : piped({ outside: r.pipe, by: reveals(6, 6), holes: { ends: r.ends, every: 600 } }),
    chamfer: r.chamfer ?? 0,
  }))

/** Bending stress of loose layers of one stiffness each, N/mm² over what they bear, with one that gives left out or not. */
const overload = (skin: readonly Sheet[], moment: number): number => {
  const known = skin.map(({ material, thickness: t }) =>
    material === 'plywood' ? [3000, 20, t] : [4000, 30, t],
  ) as [number, number, number][]
  const ways = known.map((_, out) => known.filter((__, i) => i !== out || known.length === 1)).concat([known])
  return Math.min(
    ...ways.map((layers) => {
      const rigid = layers.reduce((sum, [e, , t]) => sum + (e * t ** 3) / 12, 0)
      return Math.max(...layers.map(([e, f, t]) => (moment * e * t) / 2 / rigid / f))
    }),
  )
}

const isLoud = (found: readonly Pick<Draft, 'level'>[]): boolean =>
  found.some(({ level }) => level !== 'note')

test('ramps without a stop or a warning keep what the checks promise, reckoned another way', () => {
  const seen = { quiet: 0, piped: 0, open: 0, chamfered: 0 }
  for (const design of fc.sample(built, { numRuns: 740, seed: 7 })) {
    if (!isFramed(design, isLoud)) continue
    const { ramp, drafts } = solve(design)
    if (isLoud(drafts)) continue
    seen.quiet++
    const { side, studs, skin, deckTimbers, deckBoard, transition, pipe } = ramp
    const bay = (design.width - design.sides.count * 18) / (design.sides.count - 1)
    expect(bay).toBeGreaterThanOrEqual(40)
    expect(design.toe).toBeGreaterThan(6)

    // wood, by points 25 mm apart
    if (design.chamfer > 0 || seen.quiet % 8 === 0) expect(woodByPoints(side!, 25)).toBeGreaterThanOrEqual(40)

    // skin and board under 1500 N
    const end = Math.max(
      ...skin.map((layer) => transition!.radius.frame * (layer.end - transition!.toeAngle)),
    )
    const places = studs.map((s) => [s.at - s.width / 2, s.at + s.width / 2] as const)
    const under = deckTimbers
      .filter(({ role }) => role === 'deck' || role === 'backing')
      .map((t) => [t.x - t.width / 2, t.x + t.width / 2] as const)
      .sort((a, b) => a[0] - b[0])
    for (const [sheets, timbers, from, to] of [
      [design.skin, places, 0, end],
      [[design.deckBoard!], under, deckBoard!.from, side!.length],
    ] as const) {
      timbers.slice(1).forEach(([start], i) => {
        const span = Math.min(bay, start - timbers[i]![1])
        if (span <= 0) return
        const strip = Math.min(bay, 0.58 * span + 50)
        atMost(overload(sheets, (1500 * span) / 4 / strip), 1 + 1e-9)
      })
      const ends = timbers.length > 0 ? [timbers[0]![0] - from, to - timbers.at(-1)![1]] : [to - from]
      for (const free of ends) {
        const arm = free - 25
        if (arm > 0) atMost(overload(sheets, (1500 * arm) / Math.min(bay, 50 + 2 * arm)), 1 + 1e-9)
      }
    }

    // it stands, 80 kg on the back edge of the deck too
    if (design.chamfer > 0) {
      seen.chamfered++
      const foot = side!.length - design.chamfer
      const moment = weighed(design, ramp, 100).reduce((sum, { density, volume, x }) => {
        const arm = foot - x
        return sum + Math.min(density.least * arm, density.most * arm) * (volume / 1e9)
      }, 0)
      above(moment - 80 * design.chamfer, -0.01 * moment)
    }

    // no ledge without a pipe
    if (!design.coping) {
      seen.open++
      const { centre, radius, lipAngle } = transition!
      const face = centre.y - radius.surface * Math.cos(lipAngle)
      atMost(Math.abs(design.deckBoard!.thickness + design.height.value - face), 6 + 1e-6)
    } else {
      seen.piped++
      for (const { from, length } of pipe!.pieces) {
        const own = pipe!.holes.filter((at) => at > from && at < from + length)
        above(own.length, 1)
        atLeast(own.at(-1)! - own[0]!, 80 - 1e-6)
      }
    }
  }
  expect(seen.quiet, JSON.stringify(seen)).toBeGreaterThanOrEqual(400)
  expect(Math.min(seen.piped, seen.open, seen.chamfered)).toBeGreaterThan(20)
})
