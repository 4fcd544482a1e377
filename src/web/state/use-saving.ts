import { useState } from 'preact/hooks'
import { type Asking, stopped } from '../worker/ask.ts'
import type { Question } from '../worker/messages.ts'
import { download } from './download.ts'

/** What is being written, or what was said of the last. */
export type SavingState =
  | { readonly kind: 'idle'; readonly words: string }
  | { readonly kind: 'busy'; readonly page: number; readonly of: number }

export interface Saving {
  readonly state: SavingState
  /** asks for a file and hands it to the browser; `after`: what to do with it */
  readonly save: (question: Question, after?: string) => Promise<void>
  readonly say: (words: string) => void
  readonly stop: () => void
}

export const useSaving = (asking: Asking): Saving => {
  const [state, setState] = useState<SavingState>({ kind: 'idle', words: '' })
  const say = (words: string): void => setState({ kind: 'idle', words })
  const save = async (question: Question, after = ''): Promise<void> => {
    setState({ kind: 'busy', page: 0, of: 0 })
    try {
      const answer = await asking.ask(question, (page, of) => setState({ kind: 'busy', page, of }))
      if (answer.kind !== 'file') return
      const { name, type, bytes, warnings } = answer.file
      download(name, type, bytes)
      say([`${name} saved${after}`, ...warnings].join('. '))
    } catch (error) {
      const words = error instanceof Error ? error.message : String(error)
      say(words === stopped ? 'stopped, nothing saved' : words)
    }
  }
  return { state, save, say, stop: asking.stop }
}
