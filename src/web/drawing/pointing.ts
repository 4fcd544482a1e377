import type { PlaceName } from './check-places.ts'

/** A key of the file is set; `null` takes it out. */
export type SetKey = (path: string, value: string | null) => void

/** What the drawing points at. */
export interface Pointed {
  readonly place: PlaceName
  readonly ramp: string | null
}
