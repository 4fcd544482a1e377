import { numberList, wordList } from '../../length/word-list.ts'
import type { TimberScrews } from '../../pattern/pattern.ts'

/** `studs 1, 3 to 5 and timber 8`: the names of timbers, in the order of their numbers; '' for none. */
export const timberNames = (timbers: readonly Pick<TimberScrews, 'called' | 'timber'>[]): string =>
  wordList(
    (['stud', 'timber'] as const).flatMap((noun) => {
      const numbers = timbers.filter(({ called }) => called === noun).map(({ timber }) => timber)
      return numbers.length === 0 ? [] : [numberList(noun, numbers)]
    }),
  )
