import { useEffect, useMemo, useReducer, useRef, useState } from 'preact/hooks'
import { editDesign } from '../index.ts'
import { Checks } from './checks.tsx'
import { Column } from './column.tsx'
import { keep } from './keep.ts'
import { step, type View, viewOf } from './model.ts'
import { Save } from './save.tsx'
import { SideDrawing } from './side-drawing.tsx'
import { Top } from './top.tsx'
import type { Asking } from './worker/ask.ts'

interface AppProps {
  readonly start: string
  readonly storageRefused: boolean
  readonly asking: Asking
}

/** The whole page: one drawing, one column. All that it shows follows from the text of the design. */
export const App = ({ start, storageRefused, asking }: AppProps) => {
  const [history, take] = useReducer(step, { past: [], now: start, future: [] })
  const before = useRef<View | null>(null)
  const view = useMemo(() => viewOf(history.now, before.current), [history.now])
  before.current = view
  const [ramp, setRamp] = useState(0)
  const [notKept, setNotKept] = useState(storageRefused)

  useEffect(() => setNotKept(!keep(history.now)), [history.now])
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      // a field that is being typed in has its own way back
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return
      event.preventDefault()
      take({ kind: event.shiftKey ? 'redo' : 'undo' })
    }
    addEventListener('keydown', keys)
    return () => removeEventListener('keydown', keys)
  }, [])

  const setText = (text: string): void => take({ kind: 'text', text })
  const setKey = (path: string, value: string | null): void => setText(editDesign(history.now, path, value))

  return (
    <>
      <Top view={view} history={history} take={take} setText={setText} notKept={notKept} />
      <main>
        <SideDrawing view={view} ramp={ramp} setRamp={setRamp} setKey={setKey} />
        <div class="column">
          <Checks view={view} setKey={setKey} />
          <Column view={view} ramp={ramp} setKey={setKey} />
          <Save view={view} asking={asking} />
        </div>
      </main>
    </>
  )
}
