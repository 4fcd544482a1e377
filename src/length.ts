/** Lengths as people write and read them. */
export { type LengthReading, type LengthUnit, readLength } from './length/read.ts'
export { type LengthShowing, showLength } from './length/show.ts'
export { showTolerance } from './length/tolerance.ts'
export type { Units } from './length/units.ts'
