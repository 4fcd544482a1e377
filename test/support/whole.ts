import type { Design } from '../../src/design/design.ts'
import type { SolvedDesign, WholeDesign } from '../../src/ramp/ramp.ts'
import { drawDesign, solveDesign } from '../../src/ramp/solve.ts'

/** A design without its checks, or with those that stop it: remedies take most of the time, and are of no use to who draws it. */
export const drawnDesign = (design: Design): SolvedDesign => {
  const drawn = drawDesign(design)
  return drawn.stopped ? solveDesign(design) : drawn
}

/** A design that can be made, without its checks; throws these where one says stop. */
export const wholeDesign = (design: Design): WholeDesign => {
  const solved = drawnDesign(design)
  if (solved.stopped) throw new Error(solved.checks.map(({ id, message }) => `${id}: ${message}`).join('\n'))
  return solved
}
