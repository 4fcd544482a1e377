import type { QuarterDesign, Units } from '../../design/design.ts'
import { type Draft, stop, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { leastWood } from '../check/practice.ts'
import {
  backKey,
  boardKey,
  downKey,
  firstOf,
  firstThat,
  type Key,
  type Offered,
  orWays,
  outKey,
  quietThat,
  upKey,
} from '../check/remedy.ts'
import { deckTop } from '../check/reveal-words.ts'
import { offering, set, type Told, tell, told, typedWith } from '../check/told.ts'
import type { SolvedCoping } from './coping.ts'
import type { Transition } from './transition.ts'

/** The floor lies above the top line, or below the toe. */
export const levelFinding = (
  ramp: QuarterDesign,
  frame: number,
  floor: number,
  up: number,
  units: Units,
): Draft => {
  const show = (mm: number): string => measured(mm, units)
  return stop('notch-level', (trial: Trial) => {
    const first = (key: Key, from: number, towards: 1 | -1): Offered | null =>
      quietThat(trial, ramp, key, from, towards, units)
    if (floor >= frame - same) {
      const lower = first(upKey, up - (floor - frame), -1)
      return tell(
        `the notch's floor comes out ${floor - frame <= same ? 'level with' : `${show(floor - frame)} above`} the side's top line, so there is nothing to seat the pipe; `,
        orWays(
          [lower && told`with this deck board \`up\` may be at most ${lower}`],
          'take a thicker pipe or a thinner deck board',
        ),
      )
    }
    const said = `the notch is ${show(frame - floor)} deep and its floor comes out below the toe; `
    const least = 'take a thinner pipe or a higher ramp'
    if (ramp.coping?.by.kind === 'notch') {
      const down = first(downKey, frame - ramp.toe, -1)
      return tell(said, orWays([down && told`it may be at most ${down} deep`], least))
    }
    const higher = first(upKey, up + ramp.toe - floor, 1)
    return tell(said, orWays([higher && told`\`up\` must be at least ${higher}`], least))
  })
}

/** Whether the wall of a notch holds a pipe that is level with the deck: one no thinner than twice the board. */
const holdsLevel = ({ outside, up, down }: SolvedCoping): boolean => down + up >= outside / 2 - same

const otherPipe = 'take a thicker pipe or a thinner deck board'

/** The deck board with which it does, as far as the trial holds. */
const thinnerBoard = (trial: Trial, ramp: QuarterDesign, from: number, units: Units): Offered | null =>
  ramp.deckBoard === null ? null : firstThat(trial, ramp, boardKey, from, -1, units)

/** Wood behind the wall, and a wall high enough to hold the pipe. */
export const woodFindings = (
  ramp: QuarterDesign,
  { heights, run }: Transition,
  coping: SolvedCoping,
  deck: number,
  units: Units,
): readonly Draft[] => {
  const { centre, outside, along, up, down } = coping
  const show = (mm: number): string => measured(mm, units)
  const longer = (trial: Trial, before = ''): Told => {
    const fromLip = ramp.back.from === 'deck'
    const least = along + leastWood + (fromLip ? 0 : run)
    const enough = firstThat(trial, ramp, backKey(ramp), least, 1, units)
    const other = 'no length alone gives it: take a smaller chamfer or a thinner pipe'
    return orWays(
      [enough && (fromLip ? told`${before}a deck of ${enough}` : told`${before}a side ${enough} long`)],
      other,
    )
  }
  const findings: Draft[] = []
  if (along >= deck - same)
    findings.push(
      stop(
        'notch-long',
        (trial: Trial) =>
          told`the notch reaches ${show(along)} behind the lip, the deck is only ${show(deck)}; ${longer(trial, 'it needs ')}`,
      ),
    )
  else if (deck - along < leastWood - same)
    findings.push(
      warn(
        'notch-wood',
        (trial: Trial) =>
          told`only ${show(deck - along)} of wood stands behind the notch; ${show(leastWood)} or more is stronger: ${longer(trial)}`,
      ),
    )
  const over = centre.y - heights.frame
  if (over > same && down > same)
    findings.push(
      warn('notch-wall', (trial: Trial) => {
        const first = firstOf(ramp, units, trial)
        const reveals = ramp.coping?.by.kind === 'reveals'
        // else it only sinks under the deck
        const able = holdsLevel(coping)
        const lower = reveals && able ? first(upKey, up - over, -1) : null
        const deeper = !reveals && able ? first(downKey, outside / 2, 1) : null
        const board =
          reveals && !able ? thinnerBoard(trial, ramp, (ramp.deckBoard?.thickness ?? 0) - over, units) : null
        return tell(
          `the notch's back wall ends ${show(over)} below the pipe's middle and does not hold it; `,
          orWays(
            [
              lower &&
                told`\`up\` ${lower} or less does, in a notch ${offer(units).atLeast(down + up - lower.mm)} deep`,
              deeper && told`a notch ${deeper} deep or more does`,
              board && told`a deck board ${board} thick or less does`,
            ],
            able ? 'take a larger radius' : otherPipe,
          ),
        )
      }),
    )
  return findings
}

export const topFindings = (ramp: QuarterDesign, coping: SolvedCoping, units: Units): readonly Draft[] => {
  const { outside, up, down } = coping
  if (up >= -same) return []
  const said = `the pipe's top lies ${measured(-up, units)} under ${deckTop(ramp)}; `
  const able = holdsLevel(coping)
  const other =
    able || down + up <= 2
      ? `it is thinner than the board over its seat: ${otherPipe}`
      : `level with it, no wall would hold it: ${otherPipe}`
  return [
    warn('pipe-under-deck', (trial: Trial) => {
      if (ramp.coping?.by.kind === 'reveals') {
        const level = upKey.typed(ramp, 0)
        if (!able) {
          const board = thinnerBoard(trial, level, outside / 2, units)
          const thin =
            board &&
            typedWith(
              told`\`up\` 0 with a deck board ${board} thick or less brings it level`,
              set('coping.up', '0'),
            )
          return tell(said, orWays([thin], other))
        }
        if (trial(level))
          return tell(said, offering('`up` 0 brings it level', set('coping.up', '0')), ', more brings it up')
        const more = firstThat(trial, level, outKey, 0, 1, units)
        const both =
          more && typedWith(told`\`up\` 0 with \`out\` ${more} brings it level`, set('coping.up', '0'))
        return tell(said, orWays([both], other))
      }
      const less = able ? firstThat(trial, ramp, downKey, down + up, -1, units) : null
      return tell(
        said,
        orWays([less && told`a notch ${less} down brings it level, less brings it up`], other),
      )
    }),
  ]
}
