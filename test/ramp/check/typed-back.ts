import fc from 'fast-check'
import type { QuarterDesign, Units } from '../../../src/design/design.ts'
import { anyRamp, solve } from '../ramps.ts'
import { remediesOf } from './remedy.ts'

/** Ramps with studs of every depth, and now and then a curve too tight for its height. */
export const extreme = fc
  .record({
    ramp: anyRamp,
    section: fc.constantFrom<readonly [number, number]>([38, 89], [38, 140], [38, 184], [38, 235], [89, 89]),
    tight: fc.option(fc.double({ min: 300, max: 900, noNaN: true }), { freq: 3 }),
  })
  .map(
    ({ ramp, section, tight }): QuarterDesign => ({
      ...ramp,
      studs: { ...ramp.studs, section },
      transition:
        tight === null
          ? ramp.transition
          : { ...ramp.transition, circle: { ...ramp.transition.circle, radius: tight } },
    }),
  )

/** What still speaks after the builder did what a message said, or null. */
export const stillSaid = (ramp: QuarterDesign, units: Units): string | null => {
  const { drafts, findingsOf } = solve(ramp, units)
  const before = new Set(drafts.filter(({ level }) => level === 'stop').map(({ id }) => id))
  const asked = drafts.filter(({ level }) => level !== 'note').map(({ id }) => id)
  for (const finding of findingsOf(...new Set(asked))) {
    if (finding.level === 'note') continue
    for (const { words, design, panel } of remediesOf(ramp, finding, units)) {
      const again = solve(design, units, panel).drafts.find(
        ({ id, level }) =>
          (id === finding.id && level === finding.level) || (level === 'stop' && !before.has(id)),
      )
      if (again) return `${words} does not work: ${finding.message}\n→ ${again.id}`
    }
  }
  return null
}
