import { quote } from '../length/quote.ts'
import { flatsOf, quartersOf, type SolvedQuarter, type WholeDesign } from '../ramp/ramp.ts'
import { Failure } from './failure.ts'

/** The ramps whose sides carry a curve. Fails where there is none; `done`: what would be done with it. */
export const curvedRamps = ({ ramps }: WholeDesign, file: string, done: string): readonly SolvedQuarter[] => {
  const curved = quartersOf(ramps)
  if (curved.length === 0)
    throw new Failure(
      1,
      `no curve to ${done} in ${file}: a flat is straight cuts only, and \`traceply figures\` gives their lengths; ` +
        'add a quarter to the design, or mark its straight lines with tape and square',
    )
  return curved
}

/** What flats need in place of `what`; null where there are none. */
export const flatWords = ({ ramps }: WholeDesign, what: string): string | null => {
  const flats = flatsOf(ramps)
  if (flats.length === 0) return null
  const names = flats.map(({ name }) => quote(name)).join(', ')
  return `${names}: ${flats.length === 1 ? 'a flat needs' : 'flats need'} no ${what}; saw to the lengths of \`traceply figures\`.`
}
