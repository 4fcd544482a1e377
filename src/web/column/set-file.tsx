import { useState } from 'preact/hooks'
import type { LayingWords } from '../../index.ts'
import { download } from '../state/download.ts'
import type { OpenedSet } from '../state/use-files.ts'
import { namesOf } from '../words/page-name.ts'
import type { Asking } from '../worker/ask.ts'

interface SetFileProps {
  readonly set: OpenedSet
  readonly profile: string | null
  readonly asking: Asking
  readonly close: () => void
  readonly takeDesign: (text: string, words: LayingWords) => void
}

/** A set that was opened: any of its pages once more, or the design that it was plotted from. */
export const SetFile = ({ set, profile, asking, close, takeDesign }: SetFileProps) => {
  const [words, setWords] = useState('')
  const { plan, here, design, words: laid } = set.found
  const held = { ...plan, pages: plan.pages.filter(({ page }) => here.includes(page)) }
  const again = async (page: string): Promise<void> => {
    try {
      const answer = await asking.ask({
        kind: 'reprint',
        name: set.name,
        bytes: set.bytes,
        pages: [page],
        profile,
      })
      if (answer.kind !== 'file') return
      const { name, type, bytes, warnings } = answer.file
      download(name, type, bytes)
      setWords([`${name} saved`, ...warnings].join('. '))
    } catch (error) {
      setWords(error instanceof Error ? error.message : String(error))
    }
  }
  const take = (): void => {
    takeDesign(design, laid)
    setWords(
      `Its design is open, laid as this set was as far as the file knows. Pages that you save now are a set of their own: tape them to those of ${plan.set} only where they bear that code too.`,
    )
  }
  return (
    <section class="set" aria-label="an opened set">
      <p>
        {held.pages.length === plan.pages.length
          ? `This is set ${plan.set} on ${plan.paper.name}.`
          : `This is ${held.pages.length} of the ${plan.pages.length} pages of set ${plan.set} on ${plan.paper.name}.`}{' '}
        Which of its pages do you want once more?
      </p>
      <div class="row">
        {namesOf(held).map(({ asked, shown }) => (
          <button type="button" key={asked} name={`again-${asked}`} onClick={() => again(asked)}>
            {shown}
          </button>
        ))}
      </div>
      <div class="row">
        {design !== '' && (
          <button type="button" id="take-design" onClick={take}>
            open its design
          </button>
        )}
        <button type="button" onClick={close}>
          close the set
        </button>
      </div>
      <p role="status">{words}</p>
    </section>
  )
}
