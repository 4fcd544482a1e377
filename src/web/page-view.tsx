import { useEffect, useRef } from 'preact/hooks'
import type { PlanPage } from '../index.ts'
import { kept } from './kept.ts'
import { calledPage, pageNames } from './page-name.ts'
import { useAnswer } from './state/use-answer.ts'
import type { Saving } from './state/use-saving.ts'
import type { Asking } from './worker/ask.ts'
import type { Lay } from './worker/messages.ts'

interface PageViewProps {
  readonly text: string
  readonly lay: Lay
  readonly page: number
  /** as the plan has it; undefined while that is not known */
  readonly planned: PlanPage | undefined
  readonly saving: Saving
  readonly asking: Asking
  readonly close: () => void
}

/** One page as it will print, on white whatever the scheme of the screen. */
export const PageView = kept(({ text, lay, page, planned, saving, asking, close }: PageViewProps) => {
  const { answer, refused } = useAnswer(asking, 'page', { kind: 'page', text, lay, page })
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => button.current?.focus(), [])
  const called = planned ? calledPage(planned) : 'a page'
  const [name, shared] = planned ? pageNames(planned) : []
  return (
    <section class="sheet-view" aria-label="a page as it will print">
      <div class="row">
        <button type="button" ref={button} onClick={close}>
          back to the side
        </button>
        {name !== undefined && shared === undefined && (
          <button
            type="button"
            id="save-page"
            disabled={saving.state.kind === 'busy'}
            onClick={() =>
              saving.save({ kind: 'save', thing: 'pages', format: 'pdf', text, lay, only: name.asked })
            }
          >
            save {called} alone
          </button>
        )}
        <h2>{called} as it will print</h2>
      </div>
      {refused && <p class="wrong">{refused}</p>}
      {answer && (
        <svg viewBox={`0 0 ${answer.width} ${answer.height}`} role="img" aria-label={called}>
          <rect width={answer.width} height={answer.height} fill="#fff" />
          <g dangerouslySetInnerHTML={{ __html: answer.svg }} />
        </svg>
      )}
    </section>
  )
})
