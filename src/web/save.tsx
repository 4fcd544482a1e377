import { useState } from 'preact/hooks'
import { download } from './download.ts'
import type { View } from './model.ts'
import { type Asking, stopped } from './worker/ask.ts'
import type { Question } from './worker/messages.ts'

interface SaveProps {
  readonly view: View
  readonly asking: Asking
}

type State =
  | { readonly kind: 'idle'; readonly words: string }
  | { readonly kind: 'busy'; readonly page: number; readonly of: number }

/** What leaves the page: files on this machine, and nothing else. */
export const Save = ({ view, asking }: SaveProps) => {
  const [state, setState] = useState<State>({ kind: 'idle', words: '' })
  const save = async (question: Question): Promise<void> => {
    setState({ kind: 'busy', page: 0, of: 0 })
    try {
      const answer = await asking.ask(question, (page, of) => setState({ kind: 'busy', page, of }))
      if (answer.kind !== 'file') return
      const { name, type, bytes, warnings } = answer.file
      download(name, type, bytes)
      setState({ kind: 'idle', words: [`${name} saved`, ...warnings].join('. ') })
    } catch (error) {
      const words = error instanceof Error ? error.message : String(error)
      setState({ kind: 'idle', words: words === stopped ? 'stopped, nothing saved' : words })
    }
  }
  const good = view.problems.length === 0 ? view.good : null
  const stops = good === null || good.solved.checks.some(({ level }) => level === 'stop')
  const busy = state.kind === 'busy'
  return (
    <section class="save" aria-label="save">
      <button
        type="button"
        id="save-pages"
        disabled={busy || stops}
        onClick={() => save({ kind: 'set', text: view.text, cover: null })}
      >
        save the pages
      </button>
      <button
        type="button"
        id="save-square"
        disabled={busy || good === null}
        onClick={() => save({ kind: 'square', units: good!.design.units, paper: good!.design.paper })}
      >
        save the test square
      </button>
      <button
        type="button"
        id="save-design"
        onClick={() => download('design.yaml', 'application/yaml', view.text)}
      >
        save the design
      </button>
      {busy && (
        <button type="button" id="stop" onClick={() => asking.stop()}>
          stop
        </button>
      )}
      <p role="status">
        {busy ? (state.of > 0 ? `page ${state.page} of ${state.of}` : 'laying out') : state.words}
      </p>
    </section>
  )
}
