import type { Units } from '../../index.ts'

const bare = /^[\d\s./]+$/
const fourBare = /^[\d.]+(?:\s+[\d.]+){3}$/

/** One length or four with the unit that they are read in: what is typed stays what it is when the design's units change. */
export const withUnit = (said: string, units: Units): string => {
  const text = said.trim()
  const parts = fourBare.test(text) ? text.split(/\s+/) : text.split(',')
  return parts
    .map((part) => part.trim())
    .map((part) => (bare.test(part) ? `${part} ${units}` : part))
    .join(', ')
}
