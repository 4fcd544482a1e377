import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { type Asking, stopped } from '../worker/ask.ts'
import type { Answer, Question } from '../worker/messages.ts'

export interface Heard<K extends Answer['kind']> {
  readonly answer: Extract<Answer, { kind: K }> | null
  /** the answer belongs to what stood there before */
  readonly old: boolean
  /** what was asked last is not answered yet */
  readonly waits: boolean
  readonly refused: string | null
}

interface Told<K extends Answer['kind']> {
  readonly answer: Extract<Answer, { kind: K }> | null
  readonly refused: string | null
  /** what was asked */
  readonly key: string
}

/**
 * The worker's answer to a question that changes as one types; the last one stays, greyed, until the next is there. One question
 * is with the worker at a time: what is asked meanwhile waits, and of that the last alone is asked.
 */
export const useAnswer = <K extends Answer['kind']>(
  asking: Asking,
  kind: K,
  question: Question | null,
): Heard<K> => {
  const [told, setTold] = useState<Told<K>>({ answer: null, refused: null, key: '' })
  const key = question === null ? '' : JSON.stringify(question)
  const now = useRef({ key, question })
  now.current = { key, question }
  const busy = useRef(false)
  const gone = useRef(false)
  useEffect(
    () => () => {
      gone.current = true
    },
    [],
  )
  // before the page is painted, so that the worker begins while it is
  useLayoutEffect(() => {
    if (busy.current) return
    const ask = async (): Promise<void> => {
      busy.current = true
      for (let asked = ''; now.current.question !== null && now.current.key !== asked && !gone.current; ) {
        asked = now.current.key
        const hear = (next: (before: Told<K>) => Told<K>): void => {
          if (now.current.key === asked && !gone.current) setTold(next)
        }
        try {
          const answer = await asking.ask(now.current.question)
          if (answer.kind === kind)
            hear(() => ({ answer: answer as Extract<Answer, { kind: K }>, refused: null, key: asked }))
        } catch (error) {
          const words = error instanceof Error ? error.message : String(error)
          if (words !== stopped) hear(({ answer }) => ({ answer, refused: words, key: asked }))
        }
      }
      busy.current = false
    }
    ask()
  }, [key])
  const fresh = question !== null && told.key === key
  const { answer } = told
  const refused = fresh ? told.refused : null
  const heard = useRef<Heard<K>>({ answer, old: true, waits: false, refused })
  const next = { answer, old: !fresh || refused !== null, waits: question !== null && !fresh, refused }
  const before = heard.current
  // the same one as long as it says the same: what is drawn from it is not drawn anew
  if (
    before.answer !== next.answer ||
    before.old !== next.old ||
    before.waits !== next.waits ||
    before.refused !== next.refused
  )
    heard.current = next
  return heard.current
}
