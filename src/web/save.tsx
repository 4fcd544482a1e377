import { useState } from 'preact/hooks'
import { download } from './download.ts'
import { linkTo } from './link.ts'
import type { View } from './model.ts'
import { type Asking, stopped } from './worker/ask.ts'
import type { Lay, Question } from './worker/messages.ts'

interface SaveProps {
  readonly view: View
  readonly lay: Lay
  readonly asking: Asking
}

type State =
  | { readonly kind: 'idle'; readonly words: string }
  | { readonly kind: 'busy'; readonly page: number; readonly of: number }

/** What leaves the page: files on this machine, and nothing else. */
export const Save = ({ view, lay, asking }: SaveProps) => {
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
  const copyLink = async (): Promise<void> => {
    const link = linkTo(view.text, location.href)
    history.replaceState(null, '', link)
    try {
      await navigator.clipboard.writeText(link)
      setState({ kind: 'idle', words: 'the link with this design is copied' })
    } catch {
      setState({
        kind: 'idle',
        words: 'the link with this design stands in the address above: copy it there',
      })
    }
  }
  const good = view.problems.length === 0 ? view.good : null
  const stops = good === null || good.solved.stopped
  const busy = state.kind === 'busy'
  const { text } = view
  const units = good?.design.units ?? 'mm'
  const paper = good?.design.paper
  const squareLay: Lay = { ...lay, words: { ...lay.words, ...(paper && { paper }) } }
  const ways: readonly (readonly [id: string, words: string, question: Question, off: boolean])[] = [
    ['save-pages', 'save the pages', { kind: 'set', text, lay }, stops],
    ['save-square', 'save the test square', { kind: 'square', units, lay: squareLay }, good === null],
    ['save-booklet', 'save the booklet', { kind: 'booklet', text, lay }, stops],
    ['save-list', 'save the shopping list', { kind: 'list', text, lay }, stops],
    ['save-cuts', 'save the cuts', { kind: 'cuts', text, lay }, stops],
    ['save-offsets', 'save the offsets', { kind: 'offsets', text, lay }, stops],
  ]
  return (
    <section class="save" aria-label="save">
      <div class="row">
        {ways.map(([id, words, question, off]) => (
          <button type="button" key={id} id={id} disabled={busy || off} onClick={() => save(question)}>
            {words}
          </button>
        ))}
        <button
          type="button"
          id="save-design"
          onClick={() => download('ramp.yaml', 'application/yaml', view.text)}
        >
          save the design
        </button>
        <button type="button" id="copy-link" onClick={copyLink}>
          copy a link
        </button>
        {busy && (
          <button type="button" id="stop" onClick={() => asking.stop()}>
            stop
          </button>
        )}
      </div>
      <p role="status">
        {busy ? (state.of > 0 ? `page ${state.page} of ${state.of}` : 'laying out') : state.words}
      </p>
    </section>
  )
}
