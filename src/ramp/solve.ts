import type { Design } from '../design/design.ts'
import type { Check } from './check.ts'
import { solveQuarter } from './kinds/quarter.ts'
import type { SolvedDesign } from './ramp.ts'
import { storesFindings } from './stores.ts'

/** What a design means. Stops come first, then warnings, then notes; within a level in the order of the ramps. */
export const solveDesign = (design: Design): SolvedDesign => {
  const solved = design.ramps.map((ramp) => {
    switch (ramp.kind) {
      case 'quarter':
        return solveQuarter(ramp, design.units, design.stock)
      default:
        return ramp.kind satisfies never
    }
  })
  const checks = solved.flatMap(({ ramp, findings }) => {
    const outer = solved.find((other) => other.ramp.name === ramp.design.storesInside?.ramp)
    const stored = outer ? storesFindings(ramp, outer.ramp, design.units) : []
    return [...findings, ...stored].map((f): Check => ({ ...f, ramp: ramp.name }))
  })
  const rank = { stop: 0, warn: 1, note: 2 }
  return {
    ramps: solved.map(({ ramp }) => ramp),
    checks: checks
      .map((check, i) => ({ check, i }))
      .sort((a, b) => rank[a.check.level] - rank[b.check.level] || a.i - b.i)
      .map(({ check }) => check),
  }
}
