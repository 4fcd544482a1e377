import type { History, Step, View } from './state/model.ts'

interface TopProps {
  readonly view: View
  readonly history: History
  readonly take: (step: Step) => void
  readonly open: (file: File | undefined) => void
  /** whether this browser keeps the design */
  readonly kept: boolean
  readonly words: string
}

/** Title, the way back and forward, a file in. */
export const Top = ({ view, history, take, open, kept, words }: TopProps) => (
  <header>
    <svg viewBox="0 0 32 20" class="icon" aria-hidden="true">
      <path d="M2 17 C14 17 20 12 24 4 H30 V17 Z" />
    </svg>
    <h1>{view.said.get('title') ?? 'traceply'}</h1>
    <div class="row">
      <button
        type="button"
        id="undo"
        disabled={history.past.length === 0}
        onClick={() => take({ kind: 'undo' })}
      >
        undo
      </button>
      <button
        type="button"
        id="redo"
        disabled={history.future.length === 0}
        onClick={() => take({ kind: 'redo' })}
      >
        redo
      </button>
      <label class="file">
        open a design or a set
        <input
          type="file"
          name="file"
          accept=".yaml,.yml,.txt,.pdf"
          onChange={(event) => {
            open(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
          }}
        />
      </label>
    </div>
    {!kept && (
      <p role="status">This browser keeps nothing here: save the design before you close the page.</p>
    )}
    {words !== '' && (
      <p role="alert" class="wrong">
        {words}
      </p>
    )}
  </header>
)
