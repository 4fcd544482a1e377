import { type TextOptions, text } from '../drawing/drawing.ts'
import type { LabelPlace } from '../drawing/place-labels.ts'
import type { Point } from '../geometry/point.ts'

/** A place for a label of marks. */
export const labelPlace = (at: Point, size: number, said: string, options: TextOptions = {}): LabelPlace => ({
  text: text('mark', at, size, said, options),
})
