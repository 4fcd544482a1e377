import type { PackedFonts } from './fonts.ts'
import type { Answer, Question, Reply } from './messages.ts'

/** The worker as the page sees it: ask, hear how far it is, stop. */
export interface Asking {
  /** Rejects with the words for the builder, or with `stopped`. */
  readonly ask: (question: Question, progress?: (page: number, of: number) => void) => Promise<Answer>
  /** Ends at once what is being saved; what else is asked is asked anew. */
  readonly stop: () => void
}

export const stopped = 'stopped'

/** What a worker is started from. */
export interface WorkerSource {
  /** address of its program */
  readonly url: string
  readonly fonts: PackedFonts
}

interface Waiting {
  readonly question: Question
  readonly done: (answer: Answer) => void
  readonly refuse: (why: Error) => void
  readonly progress?: ((page: number, of: number) => void) | undefined
}

/** One worker, started when it is first asked; started anew after a stop, and after it broke. */
export const startAsking = (source: () => Promise<WorkerSource>): Asking => {
  const waiting = new Map<number, Waiting>()
  let worker: Worker | null = null
  let last = 0

  const hear = ({ data }: MessageEvent<Reply>): void => {
    const one = waiting.get(data.id)
    if (one === undefined) return
    if ('page' in data) {
      one.progress?.(data.page, data.of)
      return
    }
    waiting.delete(data.id)
    if ('answer' in data) one.done(data.answer)
    else one.refuse(new Error(data.refused))
  }
  const end = (): void => {
    worker?.terminate()
    worker = null
  }
  const start = ({ url, fonts }: WorkerSource): Worker => {
    const started = new Worker(url)
    started.onmessage = hear
    started.onerror = ({ message }) => {
      end()
      for (const { refuse } of waiting.values())
        refuse(
          new Error(
            `what lays the pages broke off: ${message || 'the browser does not say why'}; load the page anew`,
          ),
        )
      waiting.clear()
    }
    started.postMessage({ fonts })
    return started
  }
  const put = async (one: Waiting): Promise<void> => {
    const from = await source()
    worker ??= start(from)
    const id = ++last
    waiting.set(id, one)
    worker.postMessage({ id, question: one.question })
  }
  return {
    ask: (question, progress) =>
      new Promise((done, refuse) => put({ question, done, refuse, progress }).catch(refuse)),
    stop: () => {
      end()
      const all = [...waiting.values()]
      waiting.clear()
      for (const one of all)
        if (one.question.kind === 'save') one.refuse(new Error(stopped))
        else put(one).catch(one.refuse)
    },
  }
}
