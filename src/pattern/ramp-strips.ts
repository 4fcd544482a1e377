import type { Units } from '../design/design.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import { acrossStrips } from './across-strips.ts'
import { holeStrip } from './hole-strip.ts'
import { skinStrips } from './skin-strips.ts'
import type { StoryStrip } from './story-strip.ts'
import { type TapeRow, tapeRows, untapedPart } from './tape-rows.ts'

/** All strips of a ramp: each layer of skin, screws across, the pipe. */
export const rampStrips = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] => [
  ...skinStrips(ramp, units),
  ...acrossStrips(ramp, units),
  ...holeStrip(ramp, units),
]

export interface DesignStrips {
  readonly strips: readonly StoryStrip[]
  /** what a tape does as well as a strip */
  readonly byTape: readonly TapeRow[]
}

/**
 * The strips of all ramps of a design; ramps whose strips are alike share one of each, which names them all. What a tape does as well
 * has none, unless there would be no strip at all.
 */
export const designStrips = (ramps: readonly SolvedRamp[], units: Units): DesignStrips => {
  const all = sharedStrips(ramps, units)
  const strips = all.flatMap((strip) => untapedPart(strip) ?? [])
  if (strips.length > 0) return { strips, byTape: all.flatMap(tapeRows) }
  // never as long as a flat
  const short = all.filter(({ kind }) => kind !== 'layer')
  const long = all.filter(({ kind }) => kind === 'layer')
  return short.length > 0 ? { strips: short, byTape: long.flatMap(tapeRows) } : { strips: all, byTape: [] }
}

const sharedStrips = (ramps: readonly SolvedRamp[], units: Units): readonly StoryStrip[] => {
  const alike = new Map<string, SolvedRamp[]>()
  for (const ramp of ramps) {
    const key = JSON.stringify(rampStrips({ ...ramp, name: '' }, units))
    alike.set(key, [...(alike.get(key) ?? []), ramp])
  }
  return [...alike.values()].flatMap((same) =>
    rampStrips(same[0]!, units).map((strip) => ({
      ...strip,
      ramps: ramps.length === 1 ? '' : same.map(({ name }) => name).join(', '),
    })),
  )
}
