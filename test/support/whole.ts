import type { Design } from '../../src/design/design.ts'
import type { WholeDesign } from '../../src/ramp/ramp.ts'
import { solveDesign } from '../../src/ramp/solve.ts'

/** A design that can be made; throws its checks where one says stop. */
export const wholeDesign = (design: Design): WholeDesign => {
  const solved = solveDesign(design)
  if (solved.stopped) throw new Error(solved.checks.map(({ id, message }) => `${id}: ${message}`).join('\n'))
  return solved
}
