import type { Design } from '../../src/design/design.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { type Offsets, solveOffsets } from '../../src/ramp/offsets.ts'
import type { SolvedQuarter, WholeDesign } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'

export interface WithOffsets {
  readonly design: Design
  readonly solved: WholeDesign
  /** those of its ramps that carry a curve */
  readonly quarters: readonly SolvedQuarter[]
  readonly all: readonly Offsets[]
}

const known = new Map<string, Omit<WithOffsets, 'all'> | null>()

/** A design from its text, drawn once a worker; null where a check says stop. */
const drawn = (text: string): Omit<WithOffsets, 'all'> | null => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
  const { design } = reading
  const solved = drawDesign(design)
  return solved.stopped ? null : { design, solved, quarters: curvedOf(solved.ramps) }
}

/** A design from its text with the offsets of all its curves; null where a check says stop, throws where it has problems. */
export const offsetsUnlessStopped = (text: string, every?: number): WithOffsets | null => {
  const before = known.get(text)
  const whole = before === undefined ? drawn(text) : before
  known.set(text, whole)
  if (!whole) return null
  const { design, quarters } = whole
  const usual = design.units === 'in' ? 152.4 : 150
  return { ...whole, all: quarters.map((ramp) => solveOffsets(ramp, every ?? usual, design.stock.panel)) }
}

/** The same of a design that can be made. */
export const withOffsets = (text: string, every?: number): WithOffsets => {
  const found = offsetsUnlessStopped(text, every)
  if (!found) throw new Error(`a check stops it:\n${text}`)
  return found
}
