/** A point as the tests reckon with it, beside the program's own; mm. */
export interface Pt {
  readonly x: number
  readonly y: number
}
