import { isCurved } from '../index.ts'
import type { View } from './state/model.ts'
import type { Saving } from './state/use-saving.ts'
import type { Lay } from './worker/messages.ts'

interface NextProps {
  readonly view: View
  readonly lay: Lay
  readonly stopped: boolean
  /** something is to be watched */
  readonly watched: boolean
  /** pages of the set; null while they are not known */
  readonly pages: number | null
  readonly saving: Saving
}

const printIt =
  ': print it at 100 %, never "fit to page". Measure the square of page 2 with a steel rule; if it is off, type what you read under printer and save again'

/** What to do now, in one line, and the button for it. */
export const Next = ({ view, lay, stopped, watched, pages, saving }: NextProps) => {
  const { state, save, stop } = saving
  const busy = state.kind === 'busy'
  const curved = view.good?.design.ramps.some(isCurved) ?? false
  return (
    <section class="next" aria-label="what to do now">
      <button
        type="button"
        id="save-pages"
        class="main"
        disabled={busy || stopped || !curved}
        onClick={() => save({ kind: 'save', thing: 'pages', format: 'pdf', text: view.text, lay }, printIt)}
      >
        save the pages{pages === null || stopped ? '' : ` (${pages})`}
      </button>
      {busy && (
        <button type="button" id="stop" onClick={stop}>
          stop
        </button>
      )}
      <p role="status">
        {state.kind === 'busy'
          ? state.of > 0
            ? `page ${state.page} of ${state.of}`
            : 'laying out'
          : state.words !== ''
            ? state.words
            : stopped
              ? 'First mend what stands under STOP.'
              : !curved
                ? 'A flat is straight cuts: save the cuts below.'
                : watched
                  ? 'Look at what stands under watch: a button under it puts it right. Then save the pages.'
                  : 'Change the figures in colour. Then save, print at 100 %, measure the test square, tape, trace, saw.'}
      </p>
    </section>
  )
}
