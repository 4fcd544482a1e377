import type { Units } from '../design/design.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import { acrossStrips } from './across-strips.ts'
import { holeStrip } from './hole-strip.ts'
import { skinStrips } from './skin-strips.ts'
import type { StoryStrip } from './story-strip.ts'

/** All strips of a ramp: each layer of skin, screws across, the pipe. */
export const rampStrips = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] => [
  ...skinStrips(ramp, units),
  ...acrossStrips(ramp, units),
  ...holeStrip(ramp, units),
]

/** The strips of all ramps of a design; ramps whose strips are alike share one of each, which names them all. */
export const designStrips = (ramps: readonly SolvedRamp[], units: Units): readonly StoryStrip[] => {
  const alike = new Map<string, SolvedRamp[]>()
  for (const ramp of ramps) {
    const key = JSON.stringify(rampStrips({ ...ramp, name: '' }, units))
    alike.set(key, [...(alike.get(key) ?? []), ramp])
  }
  return [...alike.values()].flatMap((same) => {
    const first = same[0]!
    const shared = { ...first, name: same.map(({ name }) => name).join(', ') }
    const names = rampStrips(first, units).map(({ name }) => name)
    return rampStrips(shared, units).map((strip, i) => ({ ...strip, name: names[i]! }))
  })
}
