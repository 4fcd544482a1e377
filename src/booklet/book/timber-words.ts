import { roleWords } from '../../ramp/frame/deck-timbers.ts'
import { timberLabel } from '../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import type { Book } from './book.ts'

/** The marks under which a timber is sawn, one a bay: `T5`. */
export const timberMarks = ({ timbers }: Pick<Book, 'timbers'>, ramp: SolvedRamp, index: number): string =>
  timbers
    .filter(({ ramp: name, number }) => name === ramp.name && number === index + 1)
    .map(({ mark }) => mark)
    .join(', ')

/** `stud 5 (T5)`, `timber 9 (T9), under the deck board`: one name on all pages. */
export const timberName = (book: Pick<Book, 'timbers'>, ramp: SolvedRamp, index: number): string => {
  const behind = ramp.deckTimbers[index - ramp.studs.length]
  const name = `${timberLabel(index, ramp.studs.length)} (${timberMarks(book, ramp, index)})`
  return behind ? `${name}, ${roleWords(behind.role, ramp)}` : name
}
