import fc from 'fast-check'
import { extreme, stillSaid } from '../ramp/check/typed-back.ts'

/** What a message offers for a ramp and does not work when it is typed, in either unit. */
export const checkRemedies = (number: number): readonly string[] => {
  const [ramp] = fc.sample(extreme, { numRuns: 1, seed: number })
  return (['mm', 'in'] as const).flatMap((units) => stillSaid(ramp!, units) ?? [])
}
