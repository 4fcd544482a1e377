import type { Design } from '../design/design.ts'
import type { WholeDesign } from '../ramp/ramp.ts'
import { solveDesign } from '../ramp/solve.ts'
import { Failure } from './failure.ts'
import { showBriefly } from './show-checks.ts'

/** A design that can be laid out, with its checks in brief lines. Fails with exit 1 where one of them says stop. */
export const solveWhole = (
  design: Design,
): { readonly solved: WholeDesign; readonly checks: readonly string[] } => {
  const solved = solveDesign(design)
  const checks = showBriefly(solved.checks, design.ramps.length > 1)
  if (solved.stopped)
    throw new Failure(1, [...checks, 'nothing written; `traceply figures` shows what is solved'].join('\n'))
  return { solved, checks }
}
