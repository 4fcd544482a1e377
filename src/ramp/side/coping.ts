import type { Point } from '../../geometry/point.ts'

/** The pipe and the notch that seats it, solved: docs/geometry.md. Lengths mm. */
export interface SolvedCoping {
  readonly outside: number
  readonly seat: 'square' | 'round'
  readonly centre: Point
  /** above the deck board */
  readonly up: number
  /** square to the ridden face */
  readonly out: number
  /** from the lip along the top line to the notch's back wall */
  readonly along: number
  /** from the top line down to the seat */
  readonly down: number
}
