import { useEffect, useState } from 'preact/hooks'
import { type Asking, stopped } from './worker/ask.ts'
import type { Answer, Question } from './worker/messages.ts'

export interface Heard<K extends Answer['kind']> {
  readonly answer: Extract<Answer, { kind: K }> | null
  /** the answer belongs to what stood there before */
  readonly old: boolean
  readonly refused: string | null
}

/** So long nothing is asked while someone types, ms. */
const pause = 120

/** The worker's answer to a question that changes as one types; the last one stays, greyed, until the next is there. */
export const useAnswer = <K extends Answer['kind']>(
  asking: Asking,
  kind: K,
  question: Question | null,
): Heard<K> => {
  const [heard, setHeard] = useState<Heard<K>>({ answer: null, old: false, refused: null })
  const key = JSON.stringify(question)
  useEffect(() => {
    setHeard((before) => ({ ...before, old: true }))
    if (question === null) return
    let wanted = true
    const timer = setTimeout(async () => {
      try {
        const answer = await asking.ask(question)
        if (wanted && answer.kind === kind)
          setHeard({ answer: answer as Extract<Answer, { kind: K }>, old: false, refused: null })
      } catch (error) {
        const words = error instanceof Error ? error.message : String(error)
        if (wanted && words !== stopped) setHeard((before) => ({ ...before, refused: words }))
      }
    }, pause)
    return () => {
      wanted = false
      clearTimeout(timer)
    }
  }, [key])
  return heard
}
