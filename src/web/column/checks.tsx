import type { Check, Problem, Typing } from '../../index.ts'
import { type PlaceName, placeOfCheck } from '../drawing/check-places.ts'
import { labelOf } from '../fields/labels.ts'
import { Meant } from '../fields/meant.tsx'
import { kept } from '../kept.ts'
import type { View } from '../state/model.ts'
import type { Heard } from '../state/use-answer.ts'

interface ChecksProps {
  readonly view: View
  readonly heard: Heard<'checks'>
  readonly take: (offer: readonly Typing[]) => void
  readonly mend: (problem: Problem) => void
  readonly point: (place: PlaceName | null, ramp: string | null) => void
}

const words = { stop: 'STOP', warn: 'watch', note: 'note' } as const

/** What may throw a rider down: told before all else that is to be watched, and marked in the drawing. */
const falls: ReadonlySet<string> = new Set(['tips', 'skin-load', 'board-load'])

export const hurts = ({ id, level }: Check): boolean => level !== 'note' && falls.has(id)

const rank = (check: Check): number => (check.level === 'stop' ? 0 : hurts(check) ? 1 : 2)

/** What is wrong, worst first; the text's own faults before all. What is good to know folds away. */
export const Checks = kept(({ view, heard, take, mend, point }: ChecksProps) => {
  const { answer, old, refused } = heard
  const checks = view.problems.length === 0 ? (answer?.checks ?? []) : []
  const several = (view.good?.design.ramps.length ?? 1) > 1
  const grave = checks.filter(({ level }) => level !== 'note').sort((a, b) => rank(a) - rank(b))
  const notes = checks.filter(({ level }) => level === 'note')
  const row = (check: Check) => (
    <Row
      key={`${check.ramp}${check.id}${check.message}`}
      check={check}
      several={several}
      take={take}
      point={point}
    />
  )
  return (
    <section class={old && view.problems.length === 0 ? 'checks old' : 'checks'} aria-label="checks">
      <ul aria-live="polite">
        {view.problems.map((problem) => (
          <li key={`${problem.place.offset}${problem.message}`} class="stop">
            <b class="word">{words.stop}</b> line {problem.place.line}:{' '}
            <span class="message">{problem.message}</span>
            <Meant problem={problem} mend={mend} />
          </li>
        ))}
        {view.problems.length === 0 && refused !== null && (
          <li class="stop">
            <b class="word">{words.stop}</b> {refused}
          </li>
        )}
        {grave.map(row)}
        {view.problems.length === 0 && answer !== null && refused === null && grave.length === 0 && (
          <li class="good">nothing stops it, nothing to watch</li>
        )}
        {view.problems.length === 0 &&
          answer?.found.map((line) => (
            <li key={line} class="note">
              <b>found</b> {line}
            </li>
          ))}
      </ul>
      {notes.length > 0 && (
        <details>
          <summary>
            <b>{notes.length === 1 ? '1 note' : `${notes.length} notes`}</b> <span>good to know</span>
          </summary>
          <ul>{notes.map(row)}</ul>
        </details>
      )}
    </section>
  )
})

interface RowProps {
  readonly check: Check
  readonly several: boolean
  readonly take: (offer: readonly Typing[]) => void
  readonly point: (place: PlaceName | null, ramp: string | null) => void
}

/** The first words of a message, and the rest: what is wrong, then why and what to do. */
const headOf = (message: string): readonly [string, string] => {
  const end = message.search(/[:;] /)
  return end > 0 && end < 160 ? [message.slice(0, end), message.slice(end)] : [message, '']
}

const Row = ({ check, several, take, point }: RowProps) => {
  const { id, level, ramp, message, offers } = check
  const show = (): void => point(placeOfCheck(id), ramp)
  const [head, rest] = level === 'note' ? ['', message] : headOf(message)
  return (
    <li
      class={hurts(check) ? `${level} hurts` : level}
      onMouseEnter={show}
      onMouseLeave={() => point(null, null)}
    >
      <b class="word">{words[level]}</b> {hurts(check) && <b>A rider can fall: </b>}
      {several ? `${ramp}: ` : ''}
      {head !== '' && <b>{head}</b>}
      {rest}
      <span class="offers">
        {offers.map((offer) => (
          <button
            type="button"
            class="offer"
            key={JSON.stringify(offer)}
            data-check={id}
            onFocus={show}
            onBlur={() => point(null, null)}
            onClick={() => take(offer)}
          >
            {offer.map(typingWords).join(', ')}
          </button>
        ))}
        <button
          type="button"
          class="where"
          onFocus={show}
          onBlur={() => point(null, null)}
          onClick={show}
          aria-label={`where: ${message.slice(0, 60)}`}
        >
          where
        </button>
      </span>
    </li>
  )
}

/** `deck height: 512 mm` */
const typingWords = ({ path, value }: Typing): string => `${labelOf(path)}: ${value}`
