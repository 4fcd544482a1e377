import { useState } from 'preact/hooks'
import { type Cover, countWords, covers } from '../../index.ts'
import { FileKeys } from '../fields/key-parts.tsx'
import { Tick } from '../fields/tick.tsx'
import { kept } from '../kept.ts'
import type { Actions } from '../state/actions.ts'
import type { View } from '../state/model.ts'
import type { Heard } from '../state/use-answer.ts'
import { calledPage, pageNames } from '../words/page-name.ts'
import { withUnit } from '../words/with-unit.ts'
import type { Lay } from '../worker/messages.ts'

interface PaperProps {
  readonly view: View
  readonly actions: Actions
  readonly counts: Heard<'counts'>
  readonly plan: Heard<'plan'>
  readonly lay: Lay
  readonly setLay: (lay: Lay) => void
  readonly showPage: (page: number | null) => void
}

const means: Readonly<Record<Cover, string>> = {
  whole: 'lies on the whole side: every page the outline touches',
  line: 'the cut line only, level rows',
  ribbon: 'fewest pages, turned rows: more care',
}

const lengths = [
  [
    'margin',
    'margins',
    'as most printers leave',
    'one length, or four with commas: top, right, bottom, left',
  ],
  ['overlap', 'overlap', '12 mm', 'how far pages lie over each other'],
] as const

const paperKeys = ['paper'] as const

/** What the closed part says. */
export const paperLine = (paper: string, count: number | undefined, refused: string | null): string => {
  if (refused !== null) return `${paper}: ${refused}`
  return count === undefined ? paper : `${paper}, ${countWords(count, 'page')} to tape`
}

/** Pages as paper: three ways to cover the side with their counts, and the page that a number stands for. */
export const Paper = kept(({ view, actions, counts, plan, lay, setLay, showPage }: PaperProps) => {
  const { answer, old } = counts
  const chosen = answer?.cover
  // what stood before has pages, what there is now has none
  const none = answer !== null && !old && answer.counts[answer.cover] === 0
  const refused = counts.refused ?? plan.refused
  const setWords = (words: Partial<Lay['words']>): void =>
    setLay({ ...lay, words: { ...lay.words, ...words } })
  const { cover: own, ...uncovered } = lay.words
  return (
    <div class={old ? 'old' : undefined}>
      <fieldset class="covers">
        <legend>how much to print</legend>
        {covers.map((cover) => (
          <button
            type="button"
            key={cover}
            aria-pressed={cover === chosen}
            onClick={() =>
              cover === lay.words.cover ? setLay({ ...lay, words: uncovered }) : setWords({ cover })
            }
          >
            <CoverSketch cover={cover} />
            <b>{cover}</b>
            <span>{answer ? countWords(answer.counts[cover], 'page') : '…'}</span>
            <small>{means[cover]}</small>
          </button>
        ))}
      </fieldset>
      {own !== undefined && own === chosen && (
        <p class="help">{`${own} is your choice: tap it again to leave it to the program`}</p>
      )}
      <FileKeys keys={paperKeys} view={view} actions={actions} />
      <Tick name="strips" checked={lay.words.strips ?? false} set={(strips) => setWords({ strips })}>
        story strips too: studs, seams and screws at full size
      </Tick>
      <Tick name="pack" checked={lay.words.pack ?? false} set={(pack) => setWords({ pack })}>
        let small parts share pages
      </Tick>
      {lengths.map(([key, label, placeholder, help]) => (
        <Length
          key={key}
          name={key}
          label={label}
          placeholder={placeholder}
          help={help}
          said={lay.words[key] ?? ''}
          set={(said) => {
            const { [key]: _, ...others } = lay.words
            const told = withUnit(said, view.good?.design.units ?? 'mm')
            setLay({ ...lay, words: told === '' ? others : { ...others, [key]: told } })
          }}
        />
      ))}
      {refused && <p class="wrong">{refused}</p>}
      {!none && answer?.why && <p class="help">{`${answer.cover}: ${answer.why}`}</p>}
      {!none && plan.answer && (
        <>
          <p class="help">tap a page to see it as it will print; its number is the order of taping</p>
          <ul class="pages" aria-label="pages of the set">
            {plan.answer.plan.pages.map((page) => (
              <li key={page.page}>
                <button
                  type="button"
                  data-page={page.page}
                  onClick={() => showPage(page.page)}
                  aria-label={`${calledPage(page)} as it will print`}
                >
                  {pageNames(page)
                    .map(({ shown }) => shown)
                    .join(' and ')}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  )
})

interface LengthProps {
  readonly name: string
  readonly label: string
  readonly placeholder: string
  readonly help: string
  readonly said: string
  readonly set: (said: string) => void
}

/** Taken when one leaves it or presses Enter; until then it is what is typed, whatever else changes meanwhile. */
const Length = ({ name, label, placeholder, help, said, set }: LengthProps) => {
  const [typed, setTyped] = useState<string | null>(null)
  return (
    <div class="field middling">
      <label for={name}>{label}</label>
      <input
        id={name}
        name={name}
        autocomplete="off"
        placeholder={placeholder}
        aria-describedby={`${name}-help`}
        value={typed ?? said}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onChange={(event) => {
          set(event.currentTarget.value)
          setTyped(null)
        }}
      />
      <p class="help" id={`${name}-help`}>
        {help}
      </p>
    </div>
  )
}

/** Which sheets a cover lays on the side. */
const CoverSketch = ({ cover }: { readonly cover: Cover }) => (
  <svg viewBox="0 0 36 20" aria-hidden="true">
    <path d="M2 17 Q20 16 26 3 H34 V17 Z" class="sketch" />
    {(cover === 'whole'
      ? ['M1 10h11v8H1z', 'M12 10h11v8H12z', 'M23 10h11v8H23z', 'M23 2h11v8H23z', 'M12 2h11v8H12z']
      : cover === 'line'
        ? ['M1 11h10v8H1z', 'M11 10h10v8H11z', 'M18 2h10v8H18z']
        : ['M1 12l10-1 1 8-10 1z', 'M11 11l9-4 3 7-9 4z', 'M19 7l5-7 6 4-5 8z']
    ).map((d) => (
      <path key={d} d={d} class="sheet" />
    ))}
  </svg>
)
