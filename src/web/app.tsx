import { useEffect, useMemo, useReducer, useRef, useState } from 'preact/hooks'
import { editDesign, type PlanPage, type Problem, type Typing } from '../index.ts'
import { Checks } from './column/checks.tsx'
import { Choose } from './column/choose.tsx'
import { Column } from './column/column.tsx'
import { Paper } from './column/paper.tsx'
import { Part } from './column/part.tsx'
import { Printer } from './column/printer.tsx'
import { Save } from './column/save.tsx'
import { SetFile } from './column/set-file.tsx'
import { TextPart } from './column/text-part.tsx'
import type { PlaceName } from './drawing/check-places.ts'
import type { Pointed, SetKey } from './drawing/pointing.ts'
import { SideDrawing } from './drawing/side-drawing.tsx'
import { Next } from './next.tsx'
import { PageView } from './page-view.tsx'
import { keepDesign } from './state/keep.ts'
import { type Filled, step, type View, viewOf } from './state/model.ts'
import { useAnswer } from './state/use-answer.ts'
import { useFiles } from './state/use-files.ts'
import { useSaving } from './state/use-saving.ts'
import { Top } from './top.tsx'
import type { Asking } from './worker/ask.ts'
import type { Lay } from './worker/messages.ts'

/** Workers, so that what takes long holds up nothing else. */
export interface Askings {
  /** what follows each key */
  readonly counting: Asking
  /** checks, pages: asked while one types too */
  readonly looking: Asking
  /** for what is saved: it can be stopped without ending the others */
  readonly saving: Asking
}

interface AppProps {
  readonly start: string
  readonly askings: Askings
}

/** What a page is asked for by. */
const nameOf = (page: PlanPage | undefined): string | null =>
  page === undefined || page.kind === 'parts' || page.kind === 'strip' ? null : (page.tile ?? page.kind)

/** The whole page: one drawing, one column. All that it shows follows from the text of the design. */
export const App = ({ start, askings }: AppProps) => {
  const { counting, looking, saving: writing } = askings
  const [history, take] = useReducer(step, { past: [], now: start, future: [], of: null })
  const text = history.now
  const [filled, setFilled] = useState<Filled | null>(null)
  const before = useRef<View | null>(null)
  const view = useMemo(() => viewOf(text, before.current, filled), [text, filled])
  before.current = view
  const [ramp, setRamp] = useState(0)
  const [lay, setLay] = useState<Lay>({ words: {}, profile: null })
  const [page, setPage] = useState<number | null>(null)
  const [kept, setKept] = useState(true)
  const [pointed, setPointed] = useState<Pointed | null>(null)

  useEffect(() => {
    // not with each key: a browser's storage is slow
    const timer = setTimeout(() => setKept(keepDesign(text)), 200)
    const now = (): void => {
      keepDesign(text)
    }
    addEventListener('pagehide', now)
    return () => {
      clearTimeout(timer)
      removeEventListener('pagehide', now)
    }
  }, [text])

  const read = view.problems.length === 0
  const drawn = read && view.good?.text === text ? view.good : null
  const drawable = drawn !== null && !drawn.drawn.stopped
  const counts = useAnswer(counting, 'counts', drawable ? { kind: 'counts', text, lay } : null)
  const checks = useAnswer(looking, 'checks', read ? { kind: 'checks', text } : null)
  const plan = useAnswer(looking, 'plan', drawable ? { kind: 'plan', text, lay } : null)
  useEffect(() => {
    if (checks.answer !== null && !checks.old && checks.answer.filled !== text)
      setFilled({ text, filled: checks.answer.filled })
  }, [checks])
  const stopped = !drawable || (!checks.old && checks.answer?.stopped === true)

  const setText = (next: string, of: string | null = null): void => take({ kind: 'text', text: next, of })
  const setKey: SetKey = (path, value) => setText(editDesign(text, path, value), path)
  const takeOffer = (offer: readonly Typing[]): void =>
    setText(offer.reduce((all, { path, value }) => editDesign(all, path, value), text))
  const mend = ({ place, meant = '' }: Problem): void =>
    setText(`${text.slice(0, place.offset)}${meant}${text.slice(place.end)}`)
  const point = (place: PlaceName | null, of: string | null): void => {
    setPointed(place === null ? null : { place, ramp: of })
    const at = view.good?.design.ramps.findIndex(({ name }) => name === of) ?? -1
    if (place !== null && at >= 0) setRamp(at)
  }
  const files = useFiles(writing, (design) => setText(design))
  const saving = useSaving(writing)

  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      // a field that is being typed in has its own way back
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return
      event.preventDefault()
      take({ kind: event.shiftKey ? 'redo' : 'undo' })
    }
    const over = (event: DragEvent): void => event.preventDefault()
    const drop = (event: DragEvent): void => {
      event.preventDefault()
      files.open(event.dataTransfer?.files[0])
    }
    // what is typed in the next field is a step of its own
    const rest = (): void => take({ kind: 'rest' })
    addEventListener('keydown', keys)
    addEventListener('dragover', over)
    addEventListener('drop', drop)
    addEventListener('focusout', rest)
    return () => {
      removeEventListener('keydown', keys)
      removeEventListener('dragover', over)
      removeEventListener('drop', drop)
      removeEventListener('focusout', rest)
    }
  })

  const paper = view.said.get('paper') ?? view.good?.design.paper ?? ''
  const count = counts.answer?.counts[counts.answer.cover]
  return (
    <>
      <Top view={view} history={history} take={take} open={files.open} kept={kept} words={files.words} />
      {files.set && (
        <SetFile
          set={files.set}
          profile={lay.profile}
          asking={writing}
          close={files.closeSet}
          takeDesign={(design) => setText(design)}
        />
      )}
      <main>
        <div class="stage">
          {page === null ? (
            <SideDrawing
              view={view}
              ramp={ramp}
              setRamp={setRamp}
              setKey={setKey}
              setText={setText}
              rest={() => take({ kind: 'rest' })}
              plan={drawable && !plan.old ? (plan.answer?.plan ?? null) : null}
              showPage={setPage}
              pointed={pointed}
            />
          ) : (
            <PageView
              text={text}
              lay={lay}
              page={page}
              name={nameOf(plan.answer?.plan.pages[page - 1])}
              saving={saving}
              asking={looking}
              close={() => setPage(null)}
            />
          )}
          <Next
            view={view}
            lay={lay}
            stopped={stopped}
            watched={checks.answer?.checks.some(({ level }) => level === 'warn') ?? false}
            pages={plan.old ? null : (plan.answer?.plan.pages.length ?? null)}
            saving={saving}
          />
        </div>
        <div class="column">
          <Checks view={view} heard={checks} take={takeOffer} mend={mend} point={point} />
          <Column
            view={view}
            ramp={ramp}
            setKey={setKey}
            mend={mend}
            point={(place) => setPointed(place === null ? null : { place, ramp: null })}
          />
          <Part
            name="paper"
            line={`${paper}${count === undefined ? '' : `, ${count} to tape`}`}
            old={counts.old && drawable}
          >
            <Paper counts={counts} plan={plan} lay={lay} setLay={setLay} showPage={setPage} />
          </Part>
          <Part name="printer" line={lay.profile === null ? 'not measured' : 'corrected'}>
            <Printer
              lay={lay}
              setLay={setLay}
              paper={view.good?.design.paper ?? 'a4'}
              text={text}
              asking={looking}
            />
          </Part>
          <Save view={view} lay={lay} stopped={stopped} saving={saving} />
          <Part name="help me choose" line="from what you know, or from one of ours">
            <Choose
              units={view.good?.design.units ?? 'mm'}
              asking={writing}
              take={(design) => setText(design)}
            />
          </Part>
          <Part name="the file as text" line="all that is shown here, to copy or paste">
            <TextPart text={text} setText={setText} />
          </Part>
        </div>
      </main>
    </>
  )
}
