import { type Drawing, type Layer, type Pen, stroke } from '../../drawing/drawing.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import { pathChords } from '../../geometry/polygon/chords.ts'

export interface HatchStyle {
  readonly layer: Layer
  readonly pen: Pen
  /** radians; 45° unless said */
  readonly angle?: number
  /** from line to line, mm */
  readonly spacing: number
}

/** Thin parallel lines over a cut face: closed paths, one within another is a hole. */
export const hatch = (
  paths: readonly Path[],
  { layer, pen, angle = Math.PI / 4, spacing }: HatchStyle,
): Drawing => pathChords(paths, angle, spacing).map(([p, q]) => stroke(layer, pathOf(p, q), pen))
