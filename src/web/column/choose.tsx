import { useState } from 'preact/hooks'
import { countWords, showLength, starters, type WishKey, type WishWords, writeStarter } from '../../index.ts'
import { kept } from '../kept.ts'
import type { Asking } from '../worker/ask.ts'
import type { Answer } from '../worker/messages.ts'

interface ChooseProps {
  readonly units: 'mm' | 'in'
  /** the design that is drawn */
  readonly text: string
  readonly asking: Asking
  readonly take: (text: string) => void
}

const questions: readonly (readonly [key: WishKey, label: string, example: string])[] = [
  ['rider', 'who rides: an age, or a word from very mellow to steep', '8'],
  ['height', 'how high the deck is', 'as is custom for who rides'],
  ['width', 'how wide', 'two skins to a panel'],
  ['panels', 'panels that the sides may take', 'any'],
  ['timbers', 'timbers to buy, at most', 'any'],
  ['garage', 'floor that it is kept on, width x depth', 'any'],
  ['ceiling', 'height under the ceiling there', 'any'],
  ['door', 'door that it must pass, width x height', 'any'],
]

/** For who has no figures yet: what one knows goes in, three to five ramps that work come out. */
export const Choose = kept(({ units, text, asking, take }: ChooseProps) => {
  const [wishes, setWishes] = useState<WishWords>({})
  const [state, setState] = useState<Extract<Answer, { kind: 'choose' }> | string>('')
  const ask = async (): Promise<void> => {
    setState('looking for ramps that work')
    try {
      const answer = await asking.ask({ kind: 'choose', wishes: { ...wishes, units } })
      if (answer.kind === 'choose') setState(answer)
    } catch (error) {
      setState(error instanceof Error ? error.message : String(error))
    }
  }
  const found = typeof state === 'string' ? null : state
  return (
    <div class="choose">
      {questions.map(([key, label, example]) => (
        <div class="field" key={key}>
          <label for={`wish-${key}`}>{label}</label>
          <input
            id={`wish-${key}`}
            name={`wish-${key}`}
            autocomplete="off"
            placeholder={example}
            value={wishes[key] ?? ''}
            onInput={(event) => {
              const { [key]: _, ...others } = wishes
              const said = event.currentTarget.value.trim()
              setWishes(said === '' ? others : { ...others, [key]: event.currentTarget.value })
            }}
          />
        </div>
      ))}
      <div class="row">
        <button type="button" id="choose" onClick={ask}>
          show ramps that work
        </button>
      </div>
      <p role="status" class="words">
        {typeof state === 'string' ? state : foundWords(found!.ramps.map(({ word }) => word))}
      </p>
      {found && (
        <>
          <ul class="chosen">
            {found.ramps.map((ramp, i) => (
              <li key={ramp.design}>
                <button
                  type="button"
                  name={`take-${i + 1}`}
                  aria-pressed={ramp.design === text}
                  onClick={() => take(ramp.design)}
                >
                  <b>
                    {i + 1}: {ramp.word}
                    {ramp.design === text ? ', as it is drawn' : ''}
                  </b>
                  <span>
                    {showLength(ramp.height, units)} high, radius {showLength(ramp.radius, units)}, lip{' '}
                    {ramp.lip.toFixed(0)}°, {showLength(ramp.length, units)} long
                  </span>
                  <span>
                    {countWords(ramp.panels, 'panel')}, {countWords(ramp.boards, 'timber')},{' '}
                    {countWords(ramp.pages, 'page')} to tape, {Math.floor(ramp.weight.least)} to{' '}
                    {Math.ceil(ramp.weight.most)} kg
                  </span>
                </button>
              </li>
            ))}
          </ul>
          <p class="help">{found.notes.join(' ')}</p>
        </>
      )}
      <div class="field">
        <label for="starter">or start from one of ours</label>
        <select
          id="starter"
          name="starter"
          value=""
          onChange={(event) => {
            const starter = starters.find(({ name }) => name === event.currentTarget.value)
            if (starter) take(writeStarter(starter))
            event.currentTarget.value = ''
          }}
        >
          <option value="">choose</option>
          {starters.map(({ name, title, units: own }) => (
            <option key={name} value={name}>
              {title}, {own}
            </option>
          ))}
        </select>
      </div>
    </div>
  )
})

/** `5 ramps, from very mellow to quick`, in the order in which they stand. */
const foundWords = (words: readonly string[]): string => {
  const [first, last] = [words[0], words.at(-1)]
  const many = words.length === 1 ? '1 ramp' : `${words.length} ramps`
  return first === last ? `${many}, ${first}` : `${many}, from ${first} to ${last}`
}
