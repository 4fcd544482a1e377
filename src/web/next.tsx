import { isCurved, readProfile, type SetPlan } from '../index.ts'
import { kept } from './kept.ts'
import type { View } from './state/model.ts'
import { type Saving, savingWords } from './state/use-saving.ts'
import { madeOf } from './words/page-name.ts'
import type { Lay } from './worker/messages.ts'

interface NextProps {
  readonly view: View
  readonly lay: Lay
  readonly stopped: boolean
  /** why no pages are laid */
  readonly refused: string | null
  /** something is to be watched */
  readonly watched: boolean
  /** a button under what is to be watched types something else */
  readonly offered: boolean
  /** a rider can fall */
  readonly hurts: boolean
  /** null while the pages are not known */
  readonly plan: SetPlan | null
  /** what speaks against the printer's figures for these pages */
  readonly doubts: readonly string[]
  readonly saving: Saving
}

/** What to do now, in one line, and the button for it. */
export const Next = kept(
  ({ view, lay, stopped, refused, watched, offered, hurts, plan, doubts, saving }: NextProps) => {
    const { state, save, stop } = saving
    const busy = state.kind === 'busy'
    const curved = view.good?.design.ramps.some(isCurved) ?? false
    const unlaid = curved && !stopped ? refused : null
    const told = savingWords(state, view, lay)
    const bars = stopped
      ? 'First mend what stands under STOP.'
      : unlaid !== null
        ? `First mend what stands under paper: ${unlaid}.`
        : hurts
          ? 'Look at what stands under DANGER, before you print.'
          : null
    return (
      <section class="next" aria-label="what to do now">
        <button
          type="button"
          id="save-pages"
          // what stands in the way is told louder than this
          class={hurts ? undefined : 'main'}
          disabled={busy || stopped || !curved || unlaid !== null}
          onClick={() => save({ kind: 'save', thing: 'pages', format: 'pdf', text: view.text, lay })}
        >
          {plan === null || stopped ? 'save the pages' : `save the ${plan.pages.length} pages`}
        </button>
        {busy && (
          <button type="button" id="stop" onClick={stop}>
            stop
          </button>
        )}
        <p role="status" class={(hurts || unlaid !== null) && !busy ? 'wrong' : undefined}>
          {bars !== null && !busy
            ? `${bars} ${told ?? ''}`.trim()
            : (told ??
              (!curved
                ? 'A flat is straight cuts: save the cuts below.'
                : watched
                  ? `Look at what stands under watch${offered ? ': a button under it puts it right' : ''}. Then save the pages.`
                  : lay.profile !== null && doubts.length === 0
                    ? correctedWords(lay.profile)
                    : 'Change the figures in colour. Then save, print at 100 %, measure the test square, tape, trace, saw.'))}
        </p>
        {doubts.map((doubt) => (
          <p key={doubt} class="wrong doubt">
            {doubt}
          </p>
        ))}
        {plan !== null && !stopped && !hurts && <p class="help made-of">{madeOf(plan)}</p>}
      </section>
    )
  },
)

const correctedWords = (file: string): string => {
  const profile = readProfile(file)
  const name = 'error' in profile ? 'this printer' : profile.name
  return `The pages are corrected for ${name}. Save them, print at 100 %, measure their test square: it proves the correction. Then tape, trace, saw.`
}
