import type { Units } from '../../design/design.ts'
import { lipTrial } from '../../pattern/lip/lip-trial.ts'
import { type PipeStrip, pipeStrip } from '../../pattern/pipe-strip.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import { type Sheet, sheetWindow } from '../sheet/sheet.ts'
import { stripWidth, trialPage, trialWords } from './trial-page.ts'
import { type DrawnTrial, drawnTrial } from './trial-piece.ts'

/** The trial of a ramp as its page holds it, and the strip that measures its pipe. */
export interface RampTrial {
  readonly ramp: SolvedQuarter
  readonly trial: DrawnTrial | null
  readonly strip: PipeStrip | null
}

/** Less wood than this under the top is no trial, mm. */
const leastPiece = 40

/** How often a trial is made smaller before it is given up. */
const rounds = 8

/** No code is wider. */
const widestCode = 'WWWW-WWWW-WWWW'

export const rampTrial = (ramp: SolvedQuarter, sheet: Sheet, units: Units, title: string): RampTrial => {
  const window = sheetWindow(sheet)
  const [width, height] = [window.x1 - window.x0, window.y1 - window.y0]
  const strip = ramp.coping ? pipeStrip(ramp.coping.outside, height - 10, units) : null
  let [room, words] = [width - (strip ? stripWidth : 0), trialWords]
  // long words, and a pipe that stands out of the piece, leave less of the page to it
  for (let round = 0; round < rounds && height - words >= leastPiece; round++) {
    const found = lipTrial(ramp, room, height - words, units)
    const trial = found && drawnTrial(found)
    const over = trial && trialPage(window, trial, strip, titleOf(title, ramp), widestCode).over()
    if (!over) break
    if (over.under === 0 && over.beside === 0) return { ramp, trial, strip }
    words += over.under
    room -= over.beside + 0.1
  }
  return { ramp, trial: null, strip }
}

/** What stands over a trial. */
export const titleOf = (title: string, { name }: SolvedQuarter): string => `${title}: ${name}`

/** What a small page leaves out. */
export const trialWarnings = ({ ramp, trial, strip }: RampTrial): readonly string[] => [
  ...(ramp.coping && !trial
    ? [
        `the page is too small for the lip trial of ${ramp.name}, so there is none; take larger paper or smaller margins, or mark the notch in scrap from its tile`,
      ]
    : []),
  ...(trial && !strip
    ? [
        `the page is too low for the strip that measures the pipe of ${ramp.name}, so there is none; measure it with a calliper`,
      ]
    : []),
]
