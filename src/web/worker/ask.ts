import type { PackedFonts } from './fonts.ts'
import type { Answer, Question, Reply } from './messages.ts'

/** The worker as the page sees it: ask, hear how far it is, stop. */
export interface Asking {
  /** Rejects with the words for the builder, or with `stopped`. */
  readonly ask: (question: Question, progress?: (page: number, of: number) => void) => Promise<Answer>
  /** Ends what is being done at once. */
  readonly stop: () => void
}

export const stopped = 'stopped'

/** What a worker is started from. */
export interface WorkerSource {
  /** address of its program */
  readonly url: string
  readonly fonts: PackedFonts
}

/** One worker, started when it is first asked; started anew after a stop, and after it broke. */
export const startAsking = (source: () => Promise<WorkerSource>): Asking => {
  const waiting = new Map<
    number,
    {
      readonly done: (answer: Answer) => void
      readonly refuse: (why: Error) => void
      readonly progress?: ((page: number, of: number) => void) | undefined
    }
  >()
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
  const end = (why: string): void => {
    worker?.terminate()
    worker = null
    for (const { refuse } of waiting.values()) refuse(new Error(why))
    waiting.clear()
  }
  return {
    ask: async (question, progress) => {
      const { url, fonts } = await source()
      if (worker === null) {
        worker = new Worker(url)
        worker.onmessage = hear
        worker.onerror = ({ message }) =>
          end(
            `what lays the pages broke off: ${message || 'the browser does not say why'}; load the page anew`,
          )
        worker.postMessage({ fonts })
      }
      const [id, own] = [++last, worker]
      return new Promise((done, refuse) => {
        waiting.set(id, { done, refuse, progress })
        own.postMessage({ id, question })
      })
    },
    stop: () => end(stopped),
  }
}
