import type { Design } from '../../src/design/design.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { type Offsets, solveOffsets } from '../../src/ramp/offsets.ts'
import type { SolvedQuarter, WholeDesign } from '../../src/ramp/ramp.ts'
import { wholeDesign } from '../support/whole.ts'

export interface WithOffsets {
  readonly design: Design
  readonly solved: WholeDesign
  /** those of its ramps that carry a curve */
  readonly quarters: readonly SolvedQuarter[]
  readonly all: readonly Offsets[]
}

/** A design from its text with the offsets of all its curves; throws where it has problems or a stop. */
export const withOffsets = (text: string, every?: number): WithOffsets => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
  const { design } = reading
  const solved = wholeDesign(design)
  const quarters = curvedOf(solved.ramps)
  const usual = design.units === 'in' ? 152.4 : 150
  return {
    design,
    solved,
    quarters,
    all: quarters.map((ramp) => solveOffsets(ramp, every ?? usual, design.stock.panel)),
  }
}
