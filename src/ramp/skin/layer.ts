import type { ScrewRow } from './screw-rows.ts'
import type { LaidLayer } from './skin-plan.ts'

/** A row of screws and what goes into it. */
export interface FixedRow extends ScrewRow {
  /** of a screw, mm; null where no usual one is short enough */
  readonly length: number | null
}

/** One layer of skin whole: how it lies on the curve, in what sheets, and what they are screwed with. Lengths mm. */
export interface Layer extends LaidLayer {
  readonly rows: readonly FixedRow[]
  readonly screws: {
    readonly count: number
    /** of all but those that would come through; null where no usual screw will do */
    readonly length: number | null
  }
}
