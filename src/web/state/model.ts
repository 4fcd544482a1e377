import {
  type Design,
  drawDesign,
  editDesign,
  type LayingWords,
  type Problem,
  readDesign,
  readSaid,
  type SolvedDesign,
  type Typing,
} from '../../index.ts'
import type { Lay } from '../worker/messages.ts'

/** A design's text whose open figures were found. */
export interface Filled {
  readonly text: string
  readonly filled: string
}

/** What the page shows at once, derived from nothing but the text of the design. */
export interface View {
  readonly text: string
  readonly said: ReadonlyMap<string, string>
  /** what is wrong with the text as it stands */
  readonly problems: readonly Problem[]
  /** what the text means, with usual figures for those that it leaves open; null where it cannot be read */
  readonly read: Design | null
  /** the last text that could be read, solved: its drawing stays while a figure is half typed; nothing is said of it yet */
  readonly good: { readonly text: string; readonly design: Design; readonly drawn: SolvedDesign } | null
}

export const nextView = (text: string, before: View | null, filled: Filled | null): View =>
  before !== null && before.text === text && filled === null
    ? before
    : viewFrom(text, readSaid(text), before, filled)

/** The first view: what takes long in code that has never run is done a piece at a time, with a rest between. */
export const firstView = async (text: string, rest: () => Promise<void>): Promise<View> => {
  const found = readSaid(text)
  await rest()
  return viewFrom(text, found, null, null)
}

const viewFrom = (
  text: string,
  { said: read, reading }: ReturnType<typeof readSaid>,
  before: View | null,
  filled: Filled | null,
): View => {
  // a text that is no YAML says nothing: fields keep what they had
  const said = read.size === 0 && before !== null ? before.said : read
  if ('problems' in reading)
    return { text, said, problems: reading.problems, read: null, good: before?.good ?? null }
  const good = (design: Design): View => ({
    text,
    said,
    problems: [],
    read: reading.design,
    good: { text, design, drawn: drawDesign(design, before?.good) },
  })
  if (reading.asks.every((asks) => asks === null)) return good(reading.design)
  const whole = filled?.text === text ? readDesign(filled.filled) : null
  // a figure that is left open is found elsewhere: until then the last drawing stays
  return whole !== null && 'design' in whole
    ? good(whole.design)
    : { text, said, problems: [], read: reading.design, good: before?.good ?? null }
}

/** A design to go back or forward to; how its pages were laid, where that changed with it. */
interface Moment {
  readonly text: string
  readonly words?: LayingWords
}

/** Designs to go back and forward to. */
export interface History {
  readonly past: readonly Moment[]
  readonly now: string
  /** how its pages are laid: what is changed of that alone is no step */
  readonly lay: Lay
  readonly future: readonly Moment[]
  /** what was typed last: more of the same is one step with it */
  readonly of: string | null
}

/** `before`: a text that one may go back to at once. */
export const firstHistory = (now: string, before: string | null, lay: Lay): History => ({
  past: before === null || before === now ? [] : [{ text: before }],
  now,
  lay,
  future: [],
  of: null,
})

const mostSteps = 200

export type Step =
  | { readonly kind: 'text'; readonly text: string; readonly of: string | null }
  /** the design of a set, laid as that was */
  | { readonly kind: 'laid'; readonly text: string; readonly words: LayingWords }
  | { readonly kind: 'lay'; readonly next: (lay: Lay) => Lay }
  /** a key is typed, or goes where `value` is null */
  | { readonly kind: 'key'; readonly path: string; readonly value: string | null }
  /** what a check offers */
  | { readonly kind: 'offer'; readonly offer: readonly Typing[] }
  /** what a message asks whether it was meant */
  | { readonly kind: 'mend'; readonly problem: Problem }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  /** what was typed there since the last rest is taken back, as if it had not been */
  | { readonly kind: 'back'; readonly of: string }
  /** what is typed from here on is a step of its own */
  | { readonly kind: 'rest' }

/** `of`: more of the same is one step with it. */
const changed = (history: History, text: string, of: string | null): History =>
  text === history.now
    ? history
    : {
        past:
          of !== null && of === history.of
            ? history.past
            : [...history.past, { text: history.now }].slice(-mostSteps),
        now: text,
        lay: history.lay,
        future: [],
        of,
      }

/** Goes to `there`, and leaves the way back to what stands now. */
const gone = (
  { now, lay }: History,
  there: Moment,
): { readonly left: Moment } & Pick<History, 'now' | 'lay' | 'of'> => ({
  left: there.words === undefined ? { text: now } : { text: now, words: lay.words },
  now: there.text,
  lay: there.words === undefined ? lay : { ...lay, words: there.words },
  of: null,
})

/** `forward`: whether there is a way forward again. */
const back = (history: History, forward: boolean): History => {
  const { past, future } = history
  if (past.length === 0) return history
  const { left, ...next } = gone(history, past.at(-1)!)
  return { past: past.slice(0, -1), ...next, future: forward ? [left, ...future] : [] }
}

export const step = (history: History, taken: Step): History => {
  const { past, now, lay, future, of } = history
  switch (taken.kind) {
    case 'text':
      return changed(history, taken.text, taken.of)
    case 'laid': {
      if (taken.text === now && taken.words === lay.words) return history
      const { left, ...next } = gone(history, taken)
      return { past: [...past, left].slice(-mostSteps), ...next, future: [] }
    }
    case 'lay': {
      const next = taken.next(lay)
      return next === lay ? history : { ...history, lay: next }
    }
    case 'key':
      return changed(history, editDesign(now, taken.path, taken.value), taken.path)
    case 'offer':
      return changed(
        history,
        taken.offer.reduce((all, { path, value }) => editDesign(all, path, value), now),
        null,
      )
    case 'mend': {
      const { place, meant = '' } = taken.problem
      return changed(history, `${now.slice(0, place.offset)}${meant}${now.slice(place.end)}`, null)
    }
    case 'undo':
      return back(history, true)
    case 'redo': {
      if (future.length === 0) return history
      const { left, ...next } = gone(history, future[0]!)
      return { past: [...past, left], ...next, future: future.slice(1) }
    }
    case 'back':
      return of === taken.of ? back(history, false) : history
    case 'rest':
      return of === null ? history : { ...history, of: null }
    default:
      return taken satisfies never
  }
}
