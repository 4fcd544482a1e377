/** Where something stands in a text: offsets from 0, line and column from 1. */
export interface Place {
  readonly line: number
  readonly column: number
  readonly offset: number
  readonly end: number
}

/** One thing that is wrong with a design file. The message carries the value, the allowed range and the remedy. */
export interface Problem {
  readonly code: string
  /** key path, such as `ramps[0].height.deck`; empty for the file itself */
  readonly path: string
  readonly place: Place
  readonly message: string
  /** what the message asks whether it was meant, as it would stand at the place */
  readonly meant?: string
}
