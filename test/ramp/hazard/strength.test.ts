import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Material, materials, type Sheet } from '../../../src/design/design.ts'
import { between, beyond, stackOf } from '../../../src/ramp/hazard/strength.ts'
import { assertNear } from '../../support/near.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** N/mm²; from memory, as docs/geometry.md states them */
const known = { plywood: [3000, 20], hardboard: [4000, 30], steel: [210_000, 235], other: null } as const

/** A stack bent tighter and tighter: a layer whose face reaches its stress is gone; the greatest moment on the way. */
const bentSlowly = (sheets: readonly Sheet[]): number => {
  let most = 0
  for (let curvature = 1e-7; curvature < 1; curvature *= 1.0005) {
    let moment = 0
    for (const { material, thickness: t } of sheets) {
      const [e, f] = known[material] ?? [0, 0]
      if ((e * curvature * t) / 2 <= f) moment += e * curvature * (t ** 3 / 12)
    }
    most = Math.max(most, moment)
  }
  return most
}

describe('sheets that lie loose on each other', () => {
  test('bear what they bear when they are bent until they give one by one', () => {
    const sheet = fc.record({ thickness: real(1, 20), material: fc.constantFrom<Material>(...materials) })
    fc.assert(
      fc.property(fc.array(sheet, { minLength: 1, maxLength: 4 }), (sheets) => {
        const stack = stackOf(sheets)
        if (sheets.every(({ material }) => material === 'other')) expect(stack).toBeNull()
        else assertNear(stack!.bears, bentSlowly(sheets), 0.001 * stack!.bears)
      }),
      { numRuns: 60 },
    )
  })
  test('a sheet alone: f t² / 6', () => {
    assertNear(stackOf([{ thickness: 12, material: 'plywood' }])!.bears, (20 * 144) / 6, 1e-9)
  })
})

/** Sag under a load and the moment at the support or under it, by integrating the curvature twice in small steps from a clamp. */
const cantilever = (load: number, length: number, rigidity: number): number => {
  const steps = 20_000
  const dx = length / steps
  let [turn, sag] = [0, 0]
  for (let i = 0; i < steps; i++) {
    const moment = load * (length - (i + 0.5) * dx)
    sag += turn * dx + (moment / rigidity) * (dx * dx) * 0.5
    turn += (moment / rigidity) * dx
  }
  return sag
}

describe('a load on a spot', () => {
  const stack = stackOf([{ thickness: 12, material: 'plywood' }])!
  test('between two supports bends half of the span as half of the load bends a cantilever', () => {
    const [span, load] = [300, 1500]
    const strip = 0.58 * span + 50
    const { sag, deflection, bears } = between(stack, span, 1000, load)
    assertNear(deflection, cantilever(load / 2, span / 2, stack.stiffness * strip), 1e-3)
    assertNear(sag * span, deflection, 1e-9)
    // at F L / 4 on the strip the moment is what the sheet bears
    assertNear((bears * span) / 4 / strip, stack.bears, 1e-9)
  })
  test('on a free end bends a cantilever', () => {
    const { sag, deflection, bears } = beyond(stack, 125, 1000, 1500)
    assertNear(deflection, cantilever(1500, 100, stack.stiffness * 250), 1e-3)
    assertNear(sag * 100, deflection, 1e-9)
    assertNear((bears * 100) / 250, stack.bears, 1e-9)
  })
  test('on a narrow sheet finds no more than its width, and none where nothing hangs free', () => {
    assertNear(between(stack, 300, 100, 1500).bears, (4 * stack.bears * 100) / 300, 1e-9)
    expect(beyond(stack, 25, 1000, 1500)).toEqual({ bears: Number.POSITIVE_INFINITY, deflection: 0, sag: 0 })
    expect(between(stack, 0, 1000, 1500).sag).toBe(0)
  })
})
