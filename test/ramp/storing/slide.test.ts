import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { hasStop } from '../../../src/ramp/check/check.ts'
import { draftQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { ways } from '../../../src/ramp/stored.ts'
import { isWhole } from '../../../src/ramp/storing/body.ts'
import { pairOf, slideIn } from '../../../src/ramp/storing/storing.ts'
import { assertNear } from '../../support/near.ts'
import { circleOf, isFramed, piped, plain, plywood, stock, studded } from '../ramps.ts'
import { type Outline, overhead, slowlyPushed, solid } from './outlines.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const share = real(0.45, 0.95)

/** A ramp, and a lower one that may or may not go into it. */
const pair: fc.Arbitrary<readonly [QuarterDesign, QuarterDesign]> = fc
  .record({
    height: real(350, 1000),
    ratio: real(1.5, 3),
    toe: real(15, 60),
    deck: real(250, 700),
    every: real(130, 300),
    section: fc.constantFrom([38, 89], [45, 70], [38, 140], [35, 60]),
    pipe: fc.option(fc.constantFrom(42.4, 60.3)),
    board: fc.boolean(),
    lower: share,
    shorter: share,
    rounder: real(0.7, 1.4),
    own: fc.option(fc.constantFrom(33.7, 60.3)),
    skin: fc.array(fc.constantFrom(6, 9, 12).map(plywood), { minLength: 1, maxLength: 3 }),
    chamfer: fc.constantFrom(0, 0, 80),
  })
  .map((r) => {
    const outer: QuarterDesign = {
      ...plain,
      name: 'outer',
      height: { layer: 'frame', value: r.height },
      transition: circleOf('frame', r.height * r.ratio),
      toe: r.toe,
      back: { from: 'deck', value: r.deck },
      studs: studded({ every: r.every, section: r.section as [number, number] }),
      coping: r.pipe === null ? null : piped({ outside: r.pipe }),
      deckBoard: r.board ? plywood(15) : null,
    }
    const height = r.height * r.lower
    return [
      outer,
      {
        ...outer,
        name: 'inner',
        height: { layer: 'frame' as const, value: height },
        transition: circleOf('frame', height * r.ratio * r.rounder),
        back: { from: 'deck' as const, value: Math.max(60, r.deck * r.shorter) },
        coping: r.own === null ? null : piped({ outside: r.own }),
        skin: r.skin,
        chamfer: r.chamfer,
      },
    ] as const
  })

const drawn = (design: QuarterDesign) => {
  if (!isFramed(design)) return null
  const { ramp, drafts } = draftQuarter(design, 'mm', stock)
  return hasStop(drafts) || !isWhole(ramp) ? null : ramp
}

test('a ramp slides into another as far as outlines of chords do, every way', () => {
  let pairs = 0
  let inTheWay = 0
  const kinds = new Set<string>()
  fc.assert(
    fc.property(pair, ([around, within]) => {
      const outer = drawn(around)
      const inner = outer && drawn(within)
      if (!inner) return
      pairs++
      const pushed = pairOf(inner, outer)
      const top = pushed.box.y1
      const others = overhead(outer)
      for (const way of pairs % 6 === 0 ? ways : ways.slice(0, 1)) {
        const slid = slideIn(pushed, way)
        const posed = solid(inner).map(
          (outline): Outline =>
            outline.map(([x, y]) => [
              way.startsWith('back') ? -x : x,
              way.endsWith('upside-down') ? top - y : y,
            ]),
        )
        const xs = posed.flat().map(([x]) => x)
        const stop = Math.max(slowlyPushed(posed, others), way.startsWith('back') ? -Math.min(...xs) : 0)
        // chords of circles lie inside them by less than this
        assertNear(slid.out, stop + Math.max(...xs) - outer.length, 0.1, `${way} of pair ${pairs}`)
        assertNear(slid.front, stop + Math.min(...xs), 0.1)
        if (slid.tight) {
          inTheWay++
          kinds.add(slid.tight.meets.kind)
        }
      }
    }),
    { numRuns: 370 },
  )
  expect(pairs).toBeGreaterThanOrEqual(200)
  expect(inTheWay).toBeGreaterThan(200)
  expect([...kinds]).toEqual(expect.arrayContaining(['stud', 'skin']))
})
