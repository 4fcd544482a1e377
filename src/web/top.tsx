import type { History, Step, View } from './model.ts'

interface TopProps {
  readonly view: View
  readonly history: History
  readonly take: (step: Step) => void
  readonly setText: (text: string) => void
  readonly notKept: boolean
}

/** No design is longer; what is longer is another file. */
const mostBytes = 5_000_000

/** Title, the way back and forward, a file in. */
export const Top = ({ view, history, take, setText, notKept }: TopProps) => {
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return
    setText(file.size > mostBytes ? await file.slice(0, mostBytes).text() : await file.text())
  }
  return (
    <header>
      <h1>{view.said.get('title') ?? 'traceply'}</h1>
      <div class="row">
        <button type="button" disabled={history.past.length === 0} onClick={() => take({ kind: 'undo' })}>
          undo
        </button>
        <button type="button" disabled={history.future.length === 0} onClick={() => take({ kind: 'redo' })}>
          redo
        </button>
        <label class="file">
          open a design
          <input
            type="file"
            accept=".yaml,.yml,.pdf,.json,.txt"
            onChange={(event) => open(event.currentTarget.files?.[0])}
          />
        </label>
      </div>
      {notKept && (
        <p role="status">This browser keeps nothing here: save the design before you close the page.</p>
      )}
    </header>
  )
}
