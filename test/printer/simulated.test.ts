import { describe, expect, it } from 'vitest'
import type { Readings } from '../../src/printer/gauge.ts'
import { gaugeTrial, loose, rounding, sidesAlone, trialCases } from '../support/gauge-trial.ts'
import { assertNear } from '../support/near.ts'
import { rms } from '../support/random.ts'

describe.each([
  // the ceiling of an 8 ft side is 1 mm likely, 2.5 mm at worst
  {
    what: 'all of the page, a rule rounded to 0.25 mm',
    measure: (r: Readings) => r,
    rule: rounding,
    likely: 1,
  },
  { what: 'the square alone, a rule rounded to 0.25 mm', measure: sidesAlone, rule: rounding, likely: 1 },
  {
    what: 'all of the page, readings off by up to 0.25 mm',
    measure: (r: Readings) => r,
    rule: loose,
    likely: 1,
  },
])('2,000 printers measured by $what', ({ measure, rule, likely }) => {
  const { left, before, off, known, beyond } = gaugeTrial(measure, rule)

  it('print a curve within the ceiling once they are corrected', () => {
    const within = left.filter((mm) => mm <= 2.5).length
    expect(within / trialCases).toBeGreaterThanOrEqual(0.99)
    expect(rms(left)).toBeLessThanOrEqual(likely)
    // or there was nothing to correct
    expect(before / trialCases).toBeGreaterThan(0.9)
  })

  it('are known as well as gauge says: spread within 20 %, never beyond the worst', () => {
    for (const way of ['across', 'down', 'skew'] as const)
      assertNear(rms(off[way]) / known.likely[way], 1, 0.2, way)
    expect(beyond).toBe(0)
  })
})
