import { isRefusal, type Refusal } from '../job/refusal.ts'
import { Failure } from './failure.ts'
import { showBriefly } from './words/show-checks.ts'
import { typedName } from './words/typed-name.ts'

/** What a refusal is about: the design file, how many ramps it has, and what would be done with its curve. */
export interface Subject {
  readonly file: string
  readonly several: boolean
  readonly done: string
}

/** The result of a job. Fails where it is refused, in words for the terminal. */
export const done = <T extends object>(result: T | Refusal, subject?: Subject): T => {
  if (isRefusal(result)) throw failureOf(result, subject)
  return result
}

const failureOf = (refusal: Refusal, subject?: Subject): Failure => {
  switch (refusal.refused) {
    case 'asked':
      return new Failure(2, refusal.faults.join('\n'))
    case 'measured':
      return new Failure(1, [...refusal.faults, 'nothing kept'].join('\n'))
    case 'stock':
      return new Failure(1, [...refusal.faults, 'nothing written'].join('\n'))
    case 'stop':
      return new Failure(
        1,
        [
          ...showBriefly(refusal.checks, subject?.several ?? false, subject?.file ?? 'DESIGN'),
          `nothing written; \`traceply figures ${typedName(subject?.file ?? 'DESIGN')}\` shows what is solved`,
        ].join('\n'),
      )
    case 'no-curve':
      return new Failure(
        1,
        `no curve to ${subject?.done} in ${subject?.file}: a flat is straight cuts only, and \`traceply figures\` gives their lengths; ` +
          'add a quarter to the design, or mark its straight lines with tape and square',
      )
    default:
      return refusal satisfies never
  }
}
