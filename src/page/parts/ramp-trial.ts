import type { Units } from '../../design/design.ts'
import { type LipTrial, lipTrial } from '../../pattern/lip-trial.ts'
import { type PipeStrip, pipeStrip } from '../../pattern/pipe-strip.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { type Sheet, sheetWindow } from '../sheet/sheet.ts'
import { stripWidth, trialWords } from './trial-page.ts'

/** The trial of a ramp as its page holds it, and the strip that measures its pipe. */
export interface RampTrial {
  readonly ramp: SolvedQuarter
  readonly trial: LipTrial | null
  readonly strip: PipeStrip | null
}

export const rampTrial = (ramp: SolvedQuarter, sheet: Sheet, units: Units): RampTrial => {
  const window = sheetWindow(sheet)
  const [width, height] = [window.x1 - window.x0, window.y1 - window.y0]
  const strip = ramp.coping ? pipeStrip(ramp.coping.outside, height - 10, units) : null
  const trial = lipTrial(ramp, width - (strip ? stripWidth : 0), height - trialWords, units)
  return { ramp, trial, strip }
}

/** What a small page leaves out. */
export const trialWarnings = ({ ramp, trial, strip }: RampTrial): readonly string[] => [
  ...(ramp.coping && !trial
    ? [
        `the page is too narrow for the lip trial of ${ramp.name}, so there is none; take larger paper or smaller margins, or mark the notch in scrap from its tile`,
      ]
    : []),
  ...(trial && !strip
    ? [
        `the page is too low for the strip that measures the pipe of ${ramp.name}, so there is none; measure it with a calliper`,
      ]
    : []),
]
