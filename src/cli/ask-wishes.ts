import { readWishes, type WishKey, type WishWords } from '../job/choose/wishes.ts'
import { isRefusal } from '../job/refusal.ts'
import type { Shell } from './shell.ts'

const questions: readonly { readonly key: WishKey; readonly text: string; readonly otherwise: string }[] = [
  { key: 'units', text: 'Lengths in mm or inches (in)', otherwise: 'mm' },
  {
    key: 'rider',
    text: 'How old is who rides, or how easy: very mellow, mellow, middle …',
    otherwise: 'any',
  },
  { key: 'height', text: 'How high is the deck', otherwise: 'as is custom for who rides' },
  { key: 'width', text: 'How wide', otherwise: 'two skins to a panel' },
  { key: 'panels', text: 'How many panels may the sides take', otherwise: 'any' },
  { key: 'timbers', text: 'How many timbers do you want to buy at most', otherwise: 'any' },
  { key: 'garage', text: 'Floor it must stand on, width x depth', otherwise: 'any' },
  { key: 'ceiling', text: 'Height under the ceiling there', otherwise: 'any' },
  { key: 'door', text: 'Door it must pass, width x height', otherwise: 'any' },
  { key: 'paper', text: 'Paper of your printer', otherwise: 'A4, or letter for inches' },
]

/** Each wish in turn; Enter takes what stands in brackets, and what cannot be read is asked again. */
export const askWishes = async (ask: NonNullable<Shell['ask']>, shell: Shell): Promise<WishWords> => {
  let said: WishWords = {}
  shell.out('Enter takes what stands in brackets.\n')
  for (const { key, text, otherwise } of questions)
    for (;;) {
      const answer = (await ask(`${text} [${otherwise}]: `)).trim()
      if (answer === '') break
      const more = { ...said, [key]: answer }
      const read = readWishes(more)
      if (!isRefusal(read)) {
        said = more
        break
      }
      shell.err(`${read.refused === 'asked' ? read.faults.join('\n') : ''}\n`)
    }
  return said
}
