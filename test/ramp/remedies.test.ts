import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Units } from '../../src/design/design.ts'
import { anyRamp, type plain, solve } from './ramps.ts'
import { remediesOf } from './remedy.ts'

/** What still speaks after the builder did what a message said, or null. */
const stillSaid = (ramp: typeof plain, units: Units): string | null => {
  const { ramp: solved, findings } = solve(ramp, units)
  // no notch has a floor between a toe and a top line that lie a hair apart
  const flat = solved.transition && solved.transition.heights.frame - ramp.toe < 2
  for (const finding of flat ? [] : findings) {
    if (finding.level === 'note' || finding.id === 'stud-outside') continue
    for (const { words, design, panel } of remediesOf(ramp, finding, units)) {
      const again = solve(design, units, panel).findings.find(
        ({ id, level }) => id === finding.id && level === finding.level,
      )
      if (again) return `${words} does not work: ${finding.message}\n→ ${again.message}`
    }
  }
  return null
}

describe.each(['mm', 'in'] as const)('what a message offers works when it is typed, in %s', (units) => {
  test('for any ramp', () => {
    fc.assert(
      fc.property(anyRamp, (ramp) => {
        expect(stillSaid(ramp, units)).toBeNull()
      }),
      { numRuns: 3000, seed: 20 },
    )
  }, 120_000)
})

test('the ramps tried meet every check that has a way out', () => {
  const met = new Map<string, number>()
  for (const ramp of fc.sample(anyRamp, { numRuns: 3000, seed: 20 }))
    for (const { id, level } of solve(ramp).findings)
      if (level !== 'note') met.set(id, (met.get(id) ?? 0) + 1)
  const rare = [
    'overhang height-low toe-low toe-high steep toe-step notch-level notch-floor notch-front notch-long notch-wood',
    'notch-wall pipe-behind-face pipe-under-deck chamfer length-short width panel-size stud-toe',
  ]
    .join(' ')
    .split(' ')
    .filter((id) => (met.get(id) ?? 0) < 5)
  expect(rare).toEqual([])
}, 120_000)
