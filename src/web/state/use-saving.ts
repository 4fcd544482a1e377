import { useEffect, useMemo, useState } from 'preact/hooks'
import { readSaid } from '../../index.ts'
import { printIt } from '../words/print-it.ts'
import { type Asking, stopped } from '../worker/ask.ts'
import { type Lay, layOf } from '../worker/messages.ts'
import { download } from './download.ts'
import type { View } from './model.ts'
import { type SaveQuestion, sourceOf } from './source-of.ts'

/** What is being written, or what was said of the last. */
export type SavingState =
  | {
      readonly kind: 'idle'
      readonly words: string
      /** what was saved; null where nothing was */
      readonly file: string | null
      /** what was asked for, and what it is made of: once that changes, it is old; of what is said of a design, that */
      readonly of:
        | { readonly question: SaveQuestion; readonly source: string }
        | { readonly design: string }
        | null
    }
  | { readonly kind: 'busy'; readonly page: number; readonly of: number }

export interface Saving {
  readonly state: SavingState
  /** asks for a file and hands it to the browser */
  readonly save: (question: SaveQuestion) => Promise<void>
  /** of a design, and of the file that it was saved in: once it is another, that file is old, and all else is said no more */
  readonly say: (words: string, design: string, file?: string) => void
  readonly stop: () => void
}

/** What to do with a file, where it is of full-size pages. */
export const afterSaving = (question: SaveQuestion): string => {
  const { thing, only } = question
  if (thing !== 'pages' && thing !== 'square') return ''
  const what = thing === 'square' ? thing : only === undefined ? 'set' : 'some'
  return printIt(what, layOf(question).profile !== null)
}

const nothing: SavingState = { kind: 'idle', words: '', file: null, of: null }

/** What is left of what was said, now that the design is this: a link that went from the address is not back with the design. */
export const stillSaid = (state: SavingState, text: string): SavingState =>
  state.kind === 'idle' &&
  state.file === null &&
  state.of !== null &&
  'design' in state.of &&
  state.of.design !== text
    ? nothing
    : state

/** What is being written, or what was; null where nothing is to be told of it any more. */
export const savingWords = (state: SavingState, { text, said }: View, lay: Lay): string | null => {
  if (state.kind === 'busy')
    return state.of > 0 ? `writing ${state.page} of ${state.of} pages` : 'laying out the pages'
  const { words, file, of } = state
  if (words === '' || of === null) return null
  // what was refused may hang on more than what the file is made of
  const same =
    'design' in of
      ? of.design === text
      : file === null
        ? of.question.text === text && of.question.lay === lay
        : of.source === sourceOf({ ...of.question, text, lay }, said)
  if (same) return words
  if (file === null) return null
  const printed = 'question' in of && of.question.format === 'pdf'
  const again = printed ? 'save it again, and print only the new one' : 'save it again'
  return `${file} is from before the last change: ${again}.`
}

/** `text`: the design that is shown. */
export const useSaving = (asking: Asking, text: string): Saving => {
  const [state, setState] = useState<SavingState>(nothing)
  useEffect(() => setState((now) => stillSaid(now, text)), [text])
  const does = useMemo(() => {
    const say = (words: string, design: string, file: string | null = null): void =>
      setState({ kind: 'idle', words, file, of: { design } })
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
