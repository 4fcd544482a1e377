import type { Design } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'

/** A design from its text; throws with all problems where it has any. */
export const designOf = (text: string): Design => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design
}
