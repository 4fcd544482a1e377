import { useEffect, useMemo, useReducer, useRef, useState } from 'preact/hooks'
import { editDesign } from '../index.ts'
import { Checks } from './checks.tsx'
import { Column } from './column.tsx'
import { keepDesign } from './keep.ts'
import { step, type View, viewOf } from './model.ts'
import { PageView } from './page-view.tsx'
import { Paper } from './paper.tsx'
import { Part } from './part.tsx'
import { Printer } from './printer.tsx'
import { Save } from './save.tsx'
import { type OpenedSet, SetFile } from './set-file.tsx'
import { SideDrawing } from './side-drawing.tsx'
import { Top } from './top.tsx'
import { useAnswer } from './use-answer.ts'
import type { Asking } from './worker/ask.ts'
import type { Lay } from './worker/messages.ts'

interface AppProps {
  readonly start: string
  /** for what is asked while one types */
  readonly looking: Asking
  /** for what is saved: it can be stopped without ending the other */
  readonly saving: Asking
}

/** No design is longer; what is longer is another file. */
const mostBytes = 50_000_000

/** The whole page: one drawing, one column. All that it shows follows from the text of the design. */
export const App = ({ start, looking, saving }: AppProps) => {
  const [history, take] = useReducer(step, { past: [], now: start, future: [] })
  const before = useRef<View | null>(null)
  const view = useMemo(() => viewOf(history.now, before.current), [history.now])
  before.current = view
  const [ramp, setRamp] = useState(0)
  const [lay, setLay] = useState<Lay>({ words: {}, profile: null })
  const [page, setPage] = useState<number | null>(null)
  const [set, setSet] = useState<OpenedSet | null>(null)
  const [kept, setKept] = useState(true)
  const [words, setWords] = useState('')

  useEffect(() => setKept(keepDesign(history.now)), [history.now])
  const drawable = view.problems.length === 0 && view.good !== null && !view.good.solved.stopped
  const plan = useAnswer(looking, 'plan', drawable ? { kind: 'plan', text: view.text, lay } : null)

  const setText = (text: string): void => take({ kind: 'text', text })
  const setKey = (path: string, value: string | null): void => setText(editDesign(history.now, path, value))
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return
    if (file.size > mostBytes) {
      setWords(`${file.name} is larger than any design or set`)
      return
    }
    const bytes = new Uint8Array(await file.arrayBuffer())
    if (new TextDecoder('latin1').decode(bytes.subarray(0, 5)) !== '%PDF-') {
      setSet(null)
      setWords('')
      setText(new TextDecoder().decode(bytes.subarray(0, 5_000_000)))
      return
    }
    try {
      const answer = await saving.ask({ kind: 'open-set', bytes })
      if (answer.kind === 'open-set') setSet({ bytes, found: answer })
      setWords('')
    } catch (error) {
      setWords(error instanceof Error ? error.message : String(error))
    }
  }

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
      open(event.dataTransfer?.files[0])
    }
    addEventListener('keydown', keys)
    addEventListener('dragover', over)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('keydown', keys)
      removeEventListener('dragover', over)
      removeEventListener('drop', drop)
    }
  })

  const said = (key: string): string => view.said.get(key) ?? ''
  const pages = plan.answer?.plan.pages.length
  return (
    <>
      <Top view={view} history={history} take={take} open={open} kept={kept} words={words} />
      {set && (
        <SetFile
          set={set}
          profile={lay.profile}
          asking={saving}
          close={() => setSet(null)}
          takeDesign={setText}
        />
      )}
      <main>
        {page === null ? (
          <SideDrawing
            view={view}
            ramp={ramp}
            setRamp={setRamp}
            setKey={setKey}
            setText={setText}
            plan={drawable && !plan.old ? (plan.answer?.plan ?? null) : null}
            showPage={setPage}
          />
        ) : (
          <PageView text={view.text} lay={lay} page={page} asking={looking} close={() => setPage(null)} />
        )}
        <div class="column">
          <Checks view={view} />
          <Column view={view} ramp={ramp} setKey={setKey} />
          <Part
            name="paper"
            line={`${said('paper') || view.good?.design.paper || ''}${pages ? `, ${pages} pages` : ''}`}
          >
            <Paper heard={plan} lay={lay} setLay={setLay} showPage={setPage} />
          </Part>
          <Part name="printer" line={lay.profile === null ? 'not measured' : 'corrected'}>
            <Printer
              lay={lay}
              setLay={setLay}
              paper={view.good?.design.paper ?? 'a4'}
              text={view.text}
              asking={looking}
            />
          </Part>
          <Save view={view} lay={lay} asking={saving} />
        </div>
      </main>
    </>
  )
}
