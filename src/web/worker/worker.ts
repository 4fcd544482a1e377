import { answer } from './answer.ts'
import type { Question, Reply } from './messages.ts'

/** The part that takes time, away from the page: it answers one question after the other. */
export const startWorker = (): void => {
  const post = (reply: Reply): void => self.postMessage(reply)
  self.onmessage = async ({ data }: MessageEvent<{ readonly id: number; readonly question: Question }>) => {
    const { id, question } = data
    try {
      post({ id, answer: await answer(question, (page, of) => post({ id, page, of })) })
    } catch (error) {
      post({ id, refused: error instanceof Error ? error.message : String(error) })
    }
  }
}
