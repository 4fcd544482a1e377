import { fourLengths, type Units } from '../../index.ts'

const bare = /^[\d\s./]+$/

/** One length or four with the unit that they are read in: what is typed stays what it is when the design's units change. */
export const withUnit = (said: string, units: Units): string =>
  (fourLengths(said, units) ?? [said.trim()])
    .map((part) => (bare.test(part) ? `${part} ${units}` : part))
    .join(', ')
