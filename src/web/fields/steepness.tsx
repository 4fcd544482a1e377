import {
  isCurved,
  type SolvedRamp,
  showLength,
  steepChoices,
  steepnessWord,
  type Units,
} from '../../index.ts'
import { unitLength } from '../words/unit-length.ts'

interface SteepnessProps {
  readonly ramp: SolvedRamp
  readonly index: number
  readonly units: Units
  readonly setKey: (path: string, value: string | null) => void
}

/** Radii come in whole ones of these, mm. */
const steps = { mm: 1, in: unitLength.in / 16 } as const

/** How steep the lip is in a word, and which radii give each word at this height. */
export const Steepness = ({ ramp, index, units, setKey }: SteepnessProps) => {
  if (!isCurved(ramp)) return null
  const { circle } = ramp.design.transition
  const word = steepnessWord(ramp.transition.lipAngle)
  const step = steps[units]
  const choices = steepChoices(ramp.design).map(({ word, radius }) => ({
    word: word as string,
    least: Math.ceil(radius / step - 1e-6) * step,
  }))
  const show = (mm: number): string => showLength(mm, units)
  const rows = [
    ...choices.map(({ word, least }, i) => {
      const above = choices[i - 1]
      return {
        word,
        radius: least,
        range: above ? `${show(least)} to ${show(above.least - step)}` : `${show(least)} or more`,
      }
    }),
    { word: 'very steep', radius: null, range: `under ${show(choices.at(-1)!.least)}` },
  ]
  return (
    <div class="steepness">
      <p id="steepness-help" class="help">
        how steep the lip is at this height, by the radius of the{' '}
        {circle.layer === 'frame' ? 'frame' : 'ridden face'}; the words are custom
      </p>
      <ul aria-describedby="steepness-help">
        {rows.map((row) => (
          <li key={row.word}>
            <button
              type="button"
              disabled={row.radius === null}
              aria-pressed={row.word === word}
              onClick={() =>
                setKey(
                  `ramps.${index}.transition.circle.${circle.layer}`,
                  showLength(row.radius!, units, { unit: true }),
                )
              }
            >
              <b>{row.word}</b> <span>{row.range}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  )
}
