import { inch } from '../../../../geometry/inch.ts'
import type { Units } from '../../../../length.ts'
import { type Timber, timberCorners } from '../../../../ramp/frame/timber.ts'
import type { Splice } from '../../../../ramp/splice/splice.ts'

/** Screws from the plate's edges, and their inner row from the timber that stands on it; the rows from each other at least; common practice, no source. mm */
const practice = {
  mm: { edge: 25, clear: 10, apart: 15, step: 5 },
  in: { edge: inch, clear: (3 / 8) * inch, apart: (5 / 8) * inch, step: inch / 4 },
} as const

/** Where screws hold a plate on each side of its joint, mm. */
export interface PlateRows {
  /** from the plate's edges */
  readonly edge: number
  /** of the inner row, from the joint; null where the timber leaves no room beside the outer one */
  readonly inner: number | null
}

export const plateRows = ({ top, foot, plate }: Splice, timber: Timber, units: Units): PlateRows => {
  const { edge, clear, apart, step } = practice[units]
  const long = Math.hypot(top.x - foot.x, top.y - foot.y)
  const across = { x: (top.y - foot.y) / long, y: (foot.x - top.x) / long }
  // the joint runs along its middle
  const half = Math.max(
    ...timberCorners(timber).map(({ x, y }) => Math.abs((x - foot.x) * across.x + (y - foot.y) * across.y)),
  )
  const inner = Math.ceil((half + clear) / step - 1e-6) * step
  return { edge, inner: inner <= plate.size[0] / 2 - edge - apart ? inner : null }
}
