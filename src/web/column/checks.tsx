import { type Check, countWords, levelWords, type Problem, type Typing } from '../../index.ts'
import { hasField } from '../fields/key-parts.tsx'
import { Meant } from '../fields/meant.tsx'
import { kept } from '../kept.ts'
import type { View } from '../state/model.ts'
import type { AfterOffer } from '../state/use-after.ts'
import type { Heard } from '../state/use-answer.ts'
import { type PlaceName, placeOfCheck } from '../words/check-places.ts'
import { hurts } from '../words/hurts.ts'
import { labelOf, pathOfKey } from '../words/labels.ts'

interface ChecksProps {
  readonly view: View
  /** whose fields are shown */
  readonly ramp: number
  readonly heard: Heard<'checks'>
  /** what each offer leads to, as far as that is known */
  readonly after: AfterOffer
  readonly take: (offer: readonly Typing[]) => void
  readonly mend: (problem: Problem) => void
  readonly point: (place: PlaceName | null, ramp: string | null) => void
  /** to where a problem is mended: its field, else its line of the text */
  readonly goTo: (problem: Problem) => void
}

const wordOf = (check: Check): string =>
  check.level === 'warn' && hurts(check) ? 'DANGER' : levelWords[check.level]

const rank = (check: Check): number => (check.level === 'stop' ? 0 : hurts(check) ? 1 : 2)

/** What is wrong, worst first; the text's own faults before all. What is good to know folds away. */
export const Checks = kept(({ view, ramp, heard, after, take, mend, point, goTo }: ChecksProps) => {
  const { answer, old, refused } = heard
  const checks = view.problems.length === 0 ? (answer?.checks ?? []) : []
  const several = (view.good?.design.ramps.length ?? 1) > 1
  const grave = checks.filter(({ level }) => level !== 'note').sort((a, b) => rank(a) - rank(b))
  const notes = checks.filter(({ level }) => level === 'note')
  // what bars the way shows the way out, whichever check offers it
  const first = grave[0]
  const ways = first && bars(first) ? waysOut(first, grave, after) : null
  const row = (check: Check) => (
    <Row
      key={`${check.ramp}${check.id}${check.message}`}
      check={check}
      offers={check === first && ways !== null ? ways.offers : check.offers}
      best={check === first ? (ways?.best ?? null) : null}
      several={several}
      old={old}
      after={after}
      take={take}
      point={point}
    />
  )
  // sizes typed in the other unit are one mistake, told in one sentence
  const units = view.problems.find(({ code }) => code === 'units')
  const slips = units === undefined ? [] : view.problems.filter(({ code }) => code === 'other-unit')
  const told = [
    ...(units === undefined ? [] : [units]),
    ...view.problems.filter((problem) => problem !== units && !slips.includes(problem)),
  ]
  const problemRow = (problem: Problem) => (
    <li key={`${problem.place.offset}${problem.message}`} class="stop">
      <b class="word">{levelWords.stop}</b>{' '}
      {problem !== units && hasField(pathOfKey(problem.path), view, ramp) ? (
        <>
          a value is wrong
          {/* seen under its field; heard, and told in full, here too */}
          <span class="message heard">{problem.message}</span>
        </>
      ) : (
        <span class="message">{problem.message}</span>
      )}
      <span class="offers">
        <Meant problem={problem} mend={mend} />
        <button type="button" class="where" onClick={() => goTo(problem)}>
          {placeWords(problem)}
        </button>
      </span>
    </li>
  )
  return (
    <section class={old && view.problems.length === 0 ? 'checks old' : 'checks'} aria-label="checks">
      <ul aria-live="polite">
        {told.map(problemRow)}
        {view.problems.length === 0 && refused !== null && (
          <li class="stop">
            <b class="word">{levelWords.stop}</b> {refused}
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
      {slips.length > 0 && (
        <details>
          <summary>
            <b>the {slips.length} sizes</b> <span>that make no sense so</span>
          </summary>
          <ul>{slips.map(problemRow)}</ul>
        </details>
      )}
      {notes.length > 0 && (
        <details>
          <summary>
            <b>{countWords(notes.length, 'note')}</b> <span>good to know</span>
          </summary>
          <ul>{notes.map(row)}</ul>
        </details>
      )}
    </section>
  )
})

interface RowProps {
  readonly check: Check
  readonly offers: readonly Offer[]
  /** the strongest thing of all; null where it stands elsewhere, or is not known */
  readonly best: Offer | null
  readonly several: boolean
  /** of the text before: what it offers would be typed over what was just typed */
  readonly old: boolean
  readonly after: AfterOffer
  readonly take: (offer: readonly Typing[]) => void
  readonly point: (place: PlaceName | null, ramp: string | null) => void
}

/** The first words of a message, and the rest: what is wrong, then why and what to do. */
const headOf = (message: string): readonly [string, string] => {
  const end = message.search(/[:;] /)
  return end > 0 && end < 160 ? [message.slice(0, end), message.slice(end)] : [message, '']
}

type Offer = readonly Typing[]

const bars = (check: Check): boolean => check.level === 'stop' || hurts(check)

interface Ways {
  readonly offers: readonly Offer[]
  /** what leaves the least */
  readonly best: Offer
}

/**
 * A check's own offers where they stood before it was known, as a hand may be on its way to one; behind them the best
 * of the others' where that leaves less. Null while that is not known.
 */
const waysOut = (check: Check, grave: readonly Check[], after: AfterOffer): Ways | null => {
  const own = check.offers
  const all = [...own, ...grave.flatMap(({ offers }) => offers)]
  if (!all.every((offer) => after(offer))) return null
  const left = (offer: Offer): number => after(offer)?.left ?? Number.POSITIVE_INFINITY
  const [best] = all.sort((one, other) => left(one) - left(other))
  if (best === undefined) return null
  return { offers: own.includes(best) ? own : [...own, best], best }
}

const Row = ({ check, offers, best, several, old, after, take, point }: RowProps) => {
  const { id, level, ramp, message } = check
  const show = (): void => point(placeOfCheck(id), ramp)
  const [head, rest] = level === 'note' ? ['', message] : headOf(message)
  return (
    <li
      class={hurts(check) ? `${level} hurts` : level}
      onMouseEnter={show}
      onMouseLeave={() => point(null, null)}
    >
      <b class="word">{wordOf(check)}</b> {hurts(check) && <b>A rider can fall: </b>}
      {several ? `${ramp}: ` : ''}
      {head !== '' && <b>{head}</b>}
      {rest}
      <span class="offers">
        {offers.map((offer) => (
          <button
            type="button"
            class={offer === best ? 'offer best' : 'offer'}
            key={JSON.stringify(offer)}
            data-check={id}
            onFocus={show}
            onBlur={() => point(null, null)}
            aria-disabled={old}
            onClick={() => {
              if (!old) take(offer)
            }}
          >
            {offer.map(typingWords).join(', ')}
            {level !== 'note' && <small>{after(offer)?.words ?? 'then …'}</small>}
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

/** Where one mends it: no file is seen here, so a line is told of what has no field alone. */
const placeWords = ({ path, place }: Problem): string =>
  path === '' ? `go to line ${place.line} of the file as text` : `go to ${labelOf(pathOfKey(path))}`

/** `deck height: 512 mm` */
const typingWords = ({ path, value }: Typing): string =>
  value === null ? `no ${labelOf(path)}` : `${labelOf(path)}: ${value}`
