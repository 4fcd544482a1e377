import { kept } from './kept.ts'
import type { Step } from './state/model.ts'

interface TopProps {
  readonly title: string
  /** whether there is something to go back to, and forward */
  readonly back: boolean
  readonly forward: boolean
  readonly take: (step: Step) => void
  readonly open: (file: File | undefined) => void
  /** whether this browser keeps the design */
  readonly keeps: boolean
  readonly words: string
}

/** Title, the way back and forward, a file in. */
export const Top = kept(({ title, back, forward, take, open, keeps, words }: TopProps) => (
  <header>
    <svg viewBox="0 0 32 20" class="icon" aria-hidden="true">
      <path d="M2 17 C14 17 20 12 24 4 H30 V17 Z" />
    </svg>
    <h1>{title}</h1>
    <div class="row">
      {/* barred, they keep the focus: Enter pressed once more must not press the other */}
      <button type="button" id="undo" aria-disabled={!back} onClick={() => take({ kind: 'undo' })}>
        undo
      </button>
      <button type="button" id="redo" aria-disabled={!forward} onClick={() => take({ kind: 'redo' })}>
        redo
      </button>
      <label class="file">
        open a design or a set
        <input
          type="file"
          name="file"
          accept=".yaml,.yml,.txt,.pdf,.json"
          onChange={(event) => {
            open(event.currentTarget.files?.[0])
            event.currentTarget.value = ''
          }}
        />
      </label>
    </div>
    {!keeps && (
      <p role="status">This browser keeps nothing here: save the design before you close the page.</p>
    )}
    {words !== '' && (
      <p role="alert" class="wrong">
        {words}
      </p>
    )}
  </header>
))
