import { answer } from './answer.ts'
import type { PackedFonts } from './fonts.ts'
import type { Question, Reply } from './messages.ts'
import { platformOf, type WebPlatform } from './platform.ts'

type Heard = { readonly fonts: PackedFonts } | { readonly id: number; readonly question: Question }

/** The part that takes time, away from the page: it hears the fonts once, then answers one question after the other. */
export const startWorker = (): void => {
  let platform: WebPlatform = platformOf({ regular: '', bold: '' })
  const post = (reply: Reply): void => self.postMessage(reply)
  self.onmessage = async ({ data }: MessageEvent<Heard>) => {
    if ('fonts' in data) {
      platform = platformOf(data.fonts)
      return
    }
    const { id, question } = data
    try {
      post({ id, answer: await answer(question, (page, of) => post({ id, page, of }), platform) })
    } catch (error) {
      post({ id, refused: error instanceof Error ? error.message : String(error) })
    }
  }
}
