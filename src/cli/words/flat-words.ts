import { straightOf } from '../../design/kind-traits.ts'
import { quote } from '../../length/quote.ts'
import type { Flat, WholeDesign } from '../../ramp/ramp.ts'

/** What flats need in place of `what`; null where there are none. */
export const flatWords = ({ ramps }: WholeDesign, what: string): string | null => {
  const flats: readonly Flat[] = straightOf(ramps)
  if (flats.length === 0) return null
  const names = flats.map(({ name }) => quote(name)).join(', ')
  return `${names}: ${flats.length === 1 ? 'a flat needs' : 'flats need'} no ${what}; saw to the lengths of \`traceply figures\`.`
}
