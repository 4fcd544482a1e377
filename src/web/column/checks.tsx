import type { Check, Problem, Typing } from '../../index.ts'
import { type PlaceName, placeOfCheck } from '../drawing/check-places.ts'
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

/** What is wrong, worst first; the text's own faults before all. What is good to know folds away. */
export const Checks = ({ view, heard, take, mend, point }: ChecksProps) => {
  const { answer, old, refused } = heard
  const checks = view.problems.length === 0 ? (answer?.checks ?? []) : []
  const several = (view.good?.design.ramps.length ?? 1) > 1
  const grave = checks.filter(({ level }) => level !== 'note')
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
            <b>{words.stop}</b> line {problem.place.line}: <span class="message">{problem.message}</span>
            <Meant problem={problem} mend={mend} />
          </li>
        ))}
        {view.problems.length === 0 && refused !== null && (
          <li class="stop">
            <b>{words.stop}</b> {refused}
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
}

/** What a message asks whether it was meant, as a button that types it. */
export const Meant = ({
  problem,
  mend,
}: {
  readonly problem: Problem
  readonly mend: (of: Problem) => void
}) =>
  problem.meant === undefined ? null : (
    <button type="button" class="offer" onClick={() => mend(problem)}>
      type {problem.meant}
    </button>
  )

interface RowProps {
  readonly check: Check
  readonly several: boolean
  readonly take: (offer: readonly Typing[]) => void
  readonly point: (place: PlaceName | null, ramp: string | null) => void
}

const Row = ({ check, several, take, point }: RowProps) => {
  const { id, level, ramp, message, offers } = check
  const show = (): void => point(placeOfCheck(id), ramp)
  return (
    <li class={level} onMouseEnter={show} onMouseLeave={() => point(null, null)}>
      <b>{words[level]}</b> {several ? `${ramp}: ` : ''}
      {message}
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

/** `height deck: 512 mm` */
const typingWords = ({ path, value }: Typing): string =>
  `${path.replace(/^ramps\.\d+\./, '').replaceAll('.', ' ')}: ${value}`
