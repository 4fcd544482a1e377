import type { PlaceName } from '../words/check-places.ts'

/** What the drawing points at. */
export interface Pointed {
  readonly place: PlaceName
  readonly ramp: string | null
}

/** Where a rider can fall, told in the drawing as long as it is so. */
export interface Alarm {
  readonly place: PlaceName
  readonly words: string
}
