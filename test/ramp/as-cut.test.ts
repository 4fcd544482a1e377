import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import { type AsCut, solveAsCut } from '../../src/ramp/as-cut.ts'
import { assertNear } from '../support/near.ts'
import { notch, piped, plain, sawnSeed, sawnWithPipe, solve, transitionOf } from './ramps.ts'

const wanted = { ...plain, coping: piped() }
const cut = (design: QuarterDesign, along: number, down: number): AsCut =>
  solveAsCut(solve(design).ramp, { along, down })!

/** Up and out by the circle alone: docs/geometry.md. */
const reveals = (design: QuarterDesign, along: number, down: number) => {
  const { centre, radius, heights, lip } = transitionOf(design)
  const r = design.coping!.outside / 2
  const [x, y] = [lip.x + along - r, heights.frame - down + r]
  return {
    up: y + r - heights.deck,
    out: radius.surface + r - Math.hypot(x - centre.x, y - centre.y),
  }
}

describe('a notch that is cut', () => {
  test.each([
    [25, 37],
    [40, 45],
    [10, 20],
    [60, 60],
  ])('%s along and %s down: the reveals that come of it', (along, down) => {
    const { up, out } = reveals(wanted, along, down)
    assertNear(cut(wanted, along, down).up, up, 1e-9, 'up')
    assertNear(cut(wanted, along, down).out, out, 1e-9, 'out')
  })
  test('as designed gives the wanted reveals, and no shim', () => {
    const { coping } = solve(wanted).ramp
    const { up, out, shims } = cut(wanted, coping!.along, coping!.down)
    assertNear(up, 8, 1e-9)
    assertNear(out, 6, 1e-9)
    assertNear(shims.under, 0, 1e-9)
    assertNear(shims.behind, 0, 1e-9)
  })
  test('5 too deep and 3 too long takes shims of 5 and 3; too small, so much is to be taken off', () => {
    const { coping } = solve(wanted).ramp
    const deep = cut(wanted, coping!.along + 3, coping!.down + 5).shims
    assertNear(deep.under, 5, 1e-9)
    assertNear(deep.behind, 3, 1e-9)
    const shallow = cut(wanted, coping!.along - 2, coping!.down - 4).shims
    assertNear(shallow.under, -4, 1e-9)
    assertNear(shallow.behind, -2, 1e-9)
  })
  test('agrees with a design that says the same notch', () => {
    const { coping } = solve({ ...plain, coping: piped({}, notch(41, 44)) }).ramp
    const { up, out } = cut(wanted, 41, 44)
    assertNear(up, coping!.up, 1e-9)
    assertNear(out, coping!.out, 1e-9)
  })
  test('on any ramp the shims bring the pipe to the wanted reveals, measured on the circle', () => {
    fc.assert(
      fc.property(
        sawnWithPipe,
        fc.double({ min: 1, max: 150, noNaN: true }),
        fc.double({ min: 1, max: 150, noNaN: true }),
        (design, along, down) => {
          const { ramp } = solve(design)
          const one = solveAsCut(ramp, { along, down })!
          assertNear(one.up, reveals(design, along, down).up, 1e-6, 'up as cut')
          assertNear(one.out, reveals(design, along, down).out, 1e-6, 'out as cut')
          // a shim makes the notch so much smaller
          const cured = reveals(design, along - one.shims.behind, down - one.shims.under)
          assertNear(cured.up, ramp.coping!.up, 1e-6, 'up')
          assertNear(cured.out, ramp.coping!.out, 1e-6, 'out')
          expect(one.wanted).toEqual({ up: ramp.coping!.up, out: ramp.coping!.out })
        },
      ),
      { numRuns: 300, seed: sawnSeed },
    )
  })
  test('is nothing where there is no pipe, or none that could be solved', () => {
    expect(solveAsCut(solve(plain).ramp, { along: 30, down: 30 })).toBeNull()
    const over = { ...wanted, height: { layer: 'frame' as const, value: 2500 } }
    expect(solveAsCut(solve(over).ramp, { along: 30, down: 30 })).toBeNull()
  })
})
