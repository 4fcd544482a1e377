import type { Sheet } from '../design/design.ts'

/** The sheet that is meant where no run-out is said, and whether it has to be rolled to bend down from the ridden face. */
export interface ClosingSheet {
  readonly sheet: Sheet
  readonly rolled: boolean
}
