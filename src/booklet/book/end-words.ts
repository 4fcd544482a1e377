import { numberList, wordList } from '../../length/word-list.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import type { EndScrews } from '../../ramp/screws/end-screws.ts'
import type { Book } from './book.ts'

interface End {
  readonly width: number
  readonly depth: number
  readonly pair: EndScrews['pair']
}

/** Where in the end of a timber its two screws go, as it is measured there; timbers alike together, the commonest way first. */
export const endWords = (book: Book, ramp: SolvedRamp): readonly string[] => {
  const ways = new Map<string, number[]>()
  const ends: readonly End[] = [...ramp.studs, ...ramp.deckTimbers].map(({ width, depth }, i) => ({
    width,
    depth,
    pair: ramp.endScrews[i]!.pair,
  }))
  for (const [i, end] of ends.entries()) {
    const said = wayWords(book, end)
    ways.set(said, [...(ways.get(said) ?? []), i + 1])
  }
  const kinds = new Set<string>()
  return [...ways]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(([said, numbers]) => {
      const lies = isUpright(ends[numbers[0]! - 1]!) ? 'on edge' : 'lying flat'
      // the commonest way holds of all that lie so but for those that are named
      const named = kinds.has(lies)
      kinds.add(lies)
      return named ? `${numberList('timber', numbers)}: ${said}` : `${lies}: ${said}`
    })
}

const isUpright = ({ width, depth }: End): boolean => depth >= width

const wayWords = ({ show }: Book, { width, pair, ...end }: End): string => {
  const [a, b] = pair
  if (!isUpright({ width, pair, ...end })) {
    const [upper, lower] = [show(width / 2 - a.along), show(width / 2 + b.along)]
    return `on the middle line, ${upper === lower ? `${upper} off either edge` : `${upper} off the upper edge and ${lower} off the lower`}`
  }
  const downs = wordList([...new Set([a.down, b.down].map(show))])
  return a.along === 0
    ? `on the middle line, ${downs} below the upper edge`
    : `${show(b.along)} to either side of the middle line, ${downs} below the upper edge`
}
