import { numberList, wordList } from '../../length/word-list.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import type { EndScrews } from '../../ramp/screws/end-screws.ts'
import type { TimberEnd } from '../views/acts/act-views.ts'
import type { Book } from './book.ts'

interface End {
  readonly width: number
  readonly depth: number
  readonly pair: EndScrews['pair']
}

/** A way of the screws in words, and the timbers that have it, by their numbers; `end` is the first one's. */
interface Way {
  readonly said: string
  readonly numbers: readonly number[]
  readonly end: End
}

/** Where in the end of a timber its two screws go, as it is measured there; timbers alike together, the commonest way first. */
export const endWords = (book: Pick<Book, 'show'>, ramp: SolvedRamp): readonly string[] => {
  const kinds = new Set<string>()
  return waysOf(book, ramp).map(({ said, numbers, end }) => {
    const lies = isUpright(end) ? 'on edge' : 'lying flat'
    // the commonest way holds of all that lie so but for those that are named
    const named = kinds.has(lies)
    kinds.add(lies)
    return named ? `${numberList('timber', numbers)}: ${said}` : `${lies}: ${said}`
  })
}

/** The commonest end on edge and the commonest that lies flat, of the first ramp that has one: the first ramp's picture shows them for all. */
export const commonEnds = (book: Pick<Book, 'show' | 'solved'>): readonly TimberEnd[] => {
  const ends = book.solved.ramps.flatMap((ramp) => waysOf(book, ramp).map(({ end }) => end))
  return (['edge', 'flat'] as const).flatMap((lies) => {
    const end = ends.find((one) => isUpright(one) === (lies === 'edge'))
    return end ? [{ lies, width: end.width, depth: end.depth, screws: end.pair }] : []
  })
}

const waysOf = (book: Pick<Book, 'show'>, ramp: SolvedRamp): readonly Way[] => {
  const ways = new Map<string, { said: string; numbers: number[]; end: End }>()
  for (const [i, { width, depth }] of [...ramp.studs, ...ramp.deckTimbers].entries()) {
    const end = { width, depth, pair: ramp.endScrews[i]!.pair }
    const said = wayWords(book, end)
    const known = ways.get(said) ?? { said, numbers: [], end }
    known.numbers.push(i + 1)
    ways.set(said, known)
  }
  return [...ways.values()].sort((a, b) => b.numbers.length - a.numbers.length)
}

const isUpright = ({ width, depth }: End): boolean => depth >= width

const wayWords = ({ show }: Pick<Book, 'show'>, { width, pair, ...end }: End): string => {
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
