import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { PlanPage } from '../index.ts'
import { kept } from './kept.ts'
import { useAnswer } from './state/use-answer.ts'
import type { Saving } from './state/use-saving.ts'
import { calledPage, pageNames } from './words/page-name.ts'
import type { Asking } from './worker/ask.ts'
import type { Answer, Lay } from './worker/messages.ts'

interface PageViewProps {
  readonly text: string
  readonly lay: Lay
  readonly page: number
  /** as the plan has it; undefined while that is not known */
  readonly planned: PlanPage | undefined
  /** of the set */
  readonly count: number
  readonly turn: (page: number) => void
  /** what `planned` says is not known to be so now: nothing is saved by it */
  readonly barred: boolean
  readonly saving: Saving
  readonly asking: Asking
  readonly close: () => void
}

/** One page as it will print, on white whatever the scheme of the screen. */
export const PageView = kept(
  ({ text, lay, page, planned, count, turn, barred, saving, asking, close }: PageViewProps) => {
    const { answer, old, refused } = useAnswer(asking, 'page', { kind: 'page', text, lay, page })
    const button = useRef<HTMLButtonElement>(null)
    useEffect(() => button.current?.focus(), [])
    useEffect(() => {
      const leave = (event: KeyboardEvent): void => {
        // a field has its own use for the key
        if (event.key === 'Escape' && !(event.target as Element).matches('input, select, textarea')) close()
      }
      addEventListener('keydown', leave)
      return () => removeEventListener('keydown', leave)
    }, [close])
    const called = planned ? calledPage(planned) : 'a page'
    const [name, shared] = planned ? pageNames(planned) : []
    return (
      <section class="sheet-view" aria-label="a page as it will print">
        <h2>{called} as it will print</h2>
        <div class="row">
          <button type="button" ref={button} onClick={close}>
            back to the side
          </button>
          {name !== undefined && shared === undefined && (
            <button
              type="button"
              id="save-page"
              disabled={barred || saving.state.kind === 'busy'}
              onClick={() =>
                saving.save({ kind: 'save', thing: 'pages', format: 'pdf', text, lay, only: name.asked })
              }
            >
              save {called} alone
            </button>
          )}
          <span class="turns">
            <button type="button" id="page-before" disabled={page <= 1} onClick={() => turn(page - 1)}>
              page before
            </button>
            <button type="button" id="next-page" disabled={page >= count} onClick={() => turn(page + 1)}>
              next page
            </button>
          </span>
        </div>
        {refused && <p class="wrong">{refused}</p>}
        {answer && (
          <>
            <p class="help">
              tap the page to see it near
              {answer.turn === 0 ? '' : '; shown turned, so that its words are upright'}
            </p>
            <Sheet answer={answer} old={old} called={called} />
          </>
        )}
      </section>
    )
  },
)

/** Where on the page one taps, parts of its width and height. */
interface Tapped {
  readonly x: number
  readonly y: number
}

interface SheetProps {
  readonly answer: Extract<Answer, { kind: 'page' }>
  /** it is the leaf before */
  readonly old: boolean
  readonly called: string
}

/** The page, its words upright, as wide as there is room; a tap brings the place near, another takes it away. */
const Sheet = ({ answer: { svg, width, height, turn }, old, called }: SheetProps) => {
  const box = useRef<HTMLDivElement>(null)
  const [near, setNear] = useState<Tapped | null>(null)
  useLayoutEffect(() => {
    const { scrollWidth, scrollHeight, clientWidth, clientHeight } = box.current!
    if (near !== null)
      box.current!.scrollTo(near.x * scrollWidth - clientWidth / 2, near.y * scrollHeight - clientHeight / 2)
  }, [near])
  const [wide, high] = turn % 2 === 0 ? [width, height] : [height, width]
  const turned = [
    undefined,
    `translate(0 ${width}) rotate(-90)`,
    `translate(${width} ${height}) rotate(180)`,
    `translate(${height} 0) rotate(90)`,
  ][turn]
  return (
    <div class={old ? 'leaf-box turning' : 'leaf-box'} ref={box}>
      <div class={near === null ? 'leaf' : 'leaf near'}>
        <svg viewBox={`0 0 ${wide} ${high}`} role="img" aria-label={called}>
          <rect width={wide} height={high} fill="#fff" class="edge" />
          <g transform={turned} dangerouslySetInnerHTML={{ __html: svg }} />
        </svg>
        <button
          type="button"
          aria-pressed={near !== null}
          aria-label={`${called}, near`}
          onClick={(event) => {
            const { left, top, width: across, height: down } = event.currentTarget.getBoundingClientRect()
            // keys press it nowhere
            const middle = event.detail === 0
            setNear(
              near === null
                ? {
                    x: middle ? 0.5 : (event.clientX - left) / across,
                    y: middle ? 0.5 : (event.clientY - top) / down,
                  }
                : null,
            )
          }}
        />
      </div>
    </div>
  )
}
