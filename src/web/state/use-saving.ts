import { useMemo, useState } from 'preact/hooks'
import { readSaid } from '../../index.ts'
import { printIt } from '../words/print-it.ts'
import { type Asking, stopped } from '../worker/ask.ts'
import { layOf } from '../worker/messages.ts'
import { download } from './download.ts'
import { type SaveQuestion, sourceOf } from './source-of.ts'

/** What is being written, or what was said of the last. */
export type SavingState =
  | {
      readonly kind: 'idle'
      readonly words: string
      /** what was saved; null where nothing was */
      readonly file: string | null
      /** what was asked for, and what it is made of: once that changes, it is old */
      readonly of: { readonly question: SaveQuestion; readonly source: string } | null
    }
  | { readonly kind: 'busy'; readonly page: number; readonly of: number }

export interface Saving {
  readonly state: SavingState
  /** asks for a file and hands it to the browser */
  readonly save: (question: SaveQuestion) => Promise<void>
  readonly say: (words: string) => void
  readonly stop: () => void
}

/** What to do with a file, where it is of full-size pages. */
export const afterSaving = (question: SaveQuestion): string => {
  const { thing, only } = question
  if (thing !== 'pages' && thing !== 'square') return ''
  const what = thing === 'square' ? thing : only === undefined ? 'set' : 'some'
  return printIt(what, layOf(question).profile !== null)
}

export const useSaving = (asking: Asking): Saving => {
  const [state, setState] = useState<SavingState>({ kind: 'idle', words: '', file: null, of: null })
  const does = useMemo(() => {
    const say = (words: string): void => setState({ kind: 'idle', words, file: null, of: null })
    const save = async (question: SaveQuestion): Promise<void> => {
      setState({ kind: 'busy', page: 0, of: 0 })
      const of = { question, source: sourceOf(question, readSaid(question.text).said) }
      try {
        const answer = await asking.ask(question, (page, of) => setState({ kind: 'busy', page, of }))
        if (answer.kind !== 'file') return
        const { name, type, bytes, warnings } = answer.file
        download(name, type, bytes)
        setState({
          kind: 'idle',
          words: [`${name} saved${afterSaving(question)}`, ...warnings].join('. '),
          file: name,
          of,
        })
      } catch (error) {
        const words = error instanceof Error ? error.message : String(error)
        setState({
          kind: 'idle',
          words: words === stopped ? 'stopped, nothing saved' : words,
          file: null,
          of,
        })
      }
    }
    return { save, say, stop: asking.stop }
  }, [asking])
  return useMemo(() => ({ state, ...does }), [state])
}
