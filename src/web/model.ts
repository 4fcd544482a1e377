import {
  type Design,
  type Problem,
  readSettled,
  type SolvedDesign,
  saidKeys,
  solveDesign,
  withAnswers,
} from '../index.ts'

/** What the page shows, derived from nothing but the text of the design. */
export interface View {
  readonly text: string
  readonly said: ReadonlyMap<string, string>
  /** what is wrong with the text as it stands */
  readonly problems: readonly Problem[]
  /** the last text that could be read, solved: its drawing stays while a figure is half typed */
  readonly good: { readonly text: string; readonly design: Design; readonly solved: SolvedDesign } | null
}

export const viewOf = (text: string, before: View | null): View => {
  const read = saidKeys(text)
  // a text that is no YAML says nothing: fields keep what they had
  const said = read.size === 0 && before !== null ? before.said : read
  const reading = readSettled(text)
  if ('problems' in reading) return { text, said, problems: reading.problems, good: before?.good ?? null }
  const { design, answers } = reading
  const solved = withAnswers(solveDesign(design), answers, design.units)
  return { text, said, problems: [], good: { text, design, solved } }
}

/** Texts to go back and forward to. */
export interface History {
  readonly past: readonly string[]
  readonly now: string
  readonly future: readonly string[]
}

const mostSteps = 200

export type Step =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }

export const step = (history: History, taken: Step): History => {
  const { past, now, future } = history
  switch (taken.kind) {
    case 'text':
      return taken.text === now
        ? history
        : { past: [...past, now].slice(-mostSteps), now: taken.text, future: [] }
    case 'undo':
      return past.length === 0
        ? history
        : { past: past.slice(0, -1), now: past.at(-1)!, future: [now, ...future] }
    case 'redo':
      return future.length === 0
        ? history
        : { past: [...past, now], now: future[0]!, future: future.slice(1) }
    default:
      return taken satisfies never
  }
}
