import type { Units } from '../design/design.ts'
import { quartersOf, type SolvedQuarter, type SolvedRamp } from '../ramp/ramp.ts'
import type { Pattern } from './pattern.ts'
import { sidePattern } from './side.ts'

const partsOf = (ramp: SolvedQuarter): string => {
  const ribs = ramp.design.sides.count - 2
  return `${ramp.name}: 2 sides${ribs === 0 ? '' : ribs === 1 ? ', 1 rib' : `, ${ribs} ribs`}`
}

/** One pattern for each distinct side, in the order of the ramps; it names every part that it serves. A flat needs none. */
export const sidePatterns = (ramps: readonly SolvedRamp[], units: Units): readonly Pattern[] => {
  const groups = new Map<string, SolvedQuarter[]>()
  for (const ramp of quartersOf(ramps)) {
    const key = JSON.stringify([ramp.side.outline, ramp.studs, ramp.transition.heights, ramp.skinThickness])
    groups.set(key, [...(groups.get(key) ?? []), ramp])
  }
  return [...groups.values()].map((same) => sidePattern(same[0]!, same.map(partsOf), units))
}
