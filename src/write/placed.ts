import type { Drawing, Layer, Mark } from '../drawing/drawing.ts'
import { type Affine, affineThen } from '../geometry/affine.ts'

export type PlainMark = Exclude<Mark, { kind: 'group' }>

/** A mark with the map that takes its own frame to the page. */
export interface Placed<M extends PlainMark = PlainMark> {
  readonly mark: M
  readonly map: Affine
}

/** The marks of a drawing, groups opened, sorted by layer in drawing order; order within a layer is kept. */
export const marksByLayer = (drawing: Drawing, map: Affine): Readonly<Record<Layer, readonly Placed[]>> => {
  const sorted: Record<Layer, Placed[]> = { note: [], joint: [], datum: [], mark: [], cut: [] }
  const walk = (marks: Drawing, frame: Affine): void => {
    for (const mark of marks)
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, frame))
      else sorted[mark.layer].push({ mark, map: frame })
  }
  walk(drawing, map)
  return sorted
}
