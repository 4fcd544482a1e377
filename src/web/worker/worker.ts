import { answer } from './answer.ts'
import type { Question, Reply } from './messages.ts'
import { type PackedFonts, platform, platformWith } from './platform.ts'

/** What the page sends: first the fonts that it holds, then questions. */
export type Sent = { readonly fonts: PackedFonts } | { readonly id: number; readonly question: Question }

/** The part that takes time, away from the page: it answers one question after the other. */
export const startWorker = (): void => {
  let own = platform
  const post = (reply: Reply): void => self.postMessage(reply)
  self.onmessage = async ({ data }: MessageEvent<Sent>) => {
    if ('fonts' in data) {
      own = platformWith(data.fonts)
      return
    }
    const { id, question } = data
    try {
      post({ id, answer: await answer(question, (page, of) => post({ id, page, of }), own) })
    } catch (error) {
      post({ id, refused: error instanceof Error ? error.message : String(error) })
    }
  }
}
