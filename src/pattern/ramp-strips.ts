import type { Units } from '../design/design.ts'
import type { Ramp } from '../ramp/ramp.ts'
import { acrossStrips } from './across-strips.ts'
import { holeStrip } from './hole-strip.ts'
import { skinStrips } from './skin-strips.ts'
import type { StoryStrip } from './story-strip.ts'

/** All strips of a ramp: each layer of skin, screws across, the pipe. */
export const rampStrips = (ramp: Ramp, units: Units): readonly StoryStrip[] => [
  ...skinStrips(ramp, units),
  ...acrossStrips(ramp, units),
  ...holeStrip(ramp, units),
]
