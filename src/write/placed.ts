import { type Drawing, type Layer, layers, type Mark } from '../drawing/drawing.ts'
import { type Affine, affineThen } from '../geometry/affine.ts'

export type PlainMark = Exclude<Mark, { kind: 'group' }>

/** A mark with the map that takes its own frame to the page. */
export interface Placed<M extends PlainMark = PlainMark> {
  readonly mark: M
  readonly map: Affine
}

/** The marks of a drawing, groups opened, sorted by layer in drawing order; order within a layer is kept. */
export const marksByLayer = (drawing: Drawing, map: Affine): ReadonlyMap<Layer, readonly Placed[]> => {
  const sorted = new Map(layers.map((layer): [Layer, Placed[]] => [layer, []]))
  const walk = (marks: Drawing, frame: Affine): void => {
    for (const mark of marks)
      if (mark.kind === 'group') walk(mark.marks, affineThen(mark.map, frame))
      else sorted.get(mark.layer)!.push({ mark, map: frame })
  }
  walk(drawing, map)
  return sorted
}
