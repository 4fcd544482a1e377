import { numberList, wordList } from '../../length/word-list.ts'
import type { TimberScrews } from '../../pattern/pattern.ts'

/** `studs 1, 3 to 5 and timber 8`: the names of timbers, in the order of their numbers; '' for none. */
export const timberNames = (timbers: readonly Pick<TimberScrews, 'called' | 'timber'>[]): string => {
  const numbers: Record<TimberScrews['called'], number[]> = { stud: [], timber: [] }
  for (const { called, timber } of timbers) numbers[called].push(timber)
  const names: string[] = []
  for (const noun of ['stud', 'timber'] as const)
    if (numbers[noun].length > 0) names.push(numberList(noun, numbers[noun]))
  return wordList(names)
}
