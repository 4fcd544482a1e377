import { useEffect, useRef, useState } from 'preact/hooks'
import { type Asking, stopped } from '../worker/ask.ts'
import type { Answer, Question } from '../worker/messages.ts'

export interface Heard<K extends Answer['kind']> {
  readonly answer: Extract<Answer, { kind: K }> | null
  /** the answer belongs to what stood there before */
  readonly old: boolean
  readonly refused: string | null
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
  const [heard, setHeard] = useState<Heard<K>>({ answer: null, old: true, refused: null })
  const key = JSON.stringify(question)
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
  useEffect(() => {
    setHeard((before) => (before.old ? before : { ...before, old: true }))
    if (busy.current) return
    const ask = async (): Promise<void> => {
      busy.current = true
      for (let asked = ''; now.current.question !== null && now.current.key !== asked && !gone.current; ) {
        asked = now.current.key
        const hear = (next: (before: Heard<K>) => Heard<K>): void => {
          if (now.current.key === asked && !gone.current) setHeard(next)
        }
        try {
          const answer = await asking.ask(now.current.question)
          if (answer.kind === kind)
            hear(() => ({ answer: answer as Extract<Answer, { kind: K }>, old: false, refused: null }))
        } catch (error) {
          const words = error instanceof Error ? error.message : String(error)
          if (words !== stopped) hear((before) => ({ ...before, old: true, refused: words }))
        }
      }
      busy.current = false
    }
    ask()
  }, [key])
  return heard
}
