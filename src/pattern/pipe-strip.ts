import type { Units } from '../design/design.ts'
import { inch } from '../geometry/inch.ts'
import { showLength } from '../length.ts'

/** Paper of common weight lies this thick round the pipe, mm (80 g/m²; from memory). */
const paperThickness = 0.1

/** A strip that is wrapped round the pipe; where its zero line meets the scale stands the pipe's true diameter. */
export interface PipeStrip {
  readonly length: number
  /** of the labels */
  readonly units: Units
  /** along the strip from its zero line, mm */
  readonly ticks: readonly { readonly at: number; readonly label: string | null }[]
}

/**
 * A tick for every half millimetre or 1/32 in of diameter round the nominal one. The paper wraps at its own middle, so its
 * thickness is added once to the diameter. Null where the strip would be longer than `room` mm.
 */
export const pipeStrip = (outside: number, room: number, units: Units): PipeStrip | null => {
  const step = units === 'in' ? inch / 32 : 0.5
  const middle = Math.round(outside / step)
  const span = units === 'in' ? 4 : 6
  const ticks = Array.from({ length: 2 * span + 1 }, (_, i) => {
    const n = middle - span + i
    return {
      at: Math.PI * (n * step + paperThickness),
      label: n % 2 === 0 ? showLength(n * step, units, { decimals: 1 }) : null,
    }
  })
  const length = ticks.at(-1)!.at + 12
  return length <= room ? { length, units, ticks } : null
}
