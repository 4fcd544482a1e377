import type { Drawing, Layer, Mark, SharedGroup } from '../drawing/drawing.ts'
import { type Affine, affineThen } from '../geometry/affine.ts'

export type PlainMark = Exclude<Mark, { kind: 'group' }>

/** A mark with the map that takes its own frame to the page; of a shared group the frame of its marks. */
export interface Placed<M extends PlainMark | SharedGroup = PlainMark> {
  readonly mark: M
  readonly map: Affine
}

type ByLayer<T> = Readonly<Record<Layer, readonly T[]>>

/** The marks of a drawing, groups opened, sorted by layer in drawing order; order within a layer is kept. */
export const marksByLayer = (drawing: Drawing, map: Affine): ByLayer<Placed> =>
  sorted(drawing, map, false) as ByLayer<Placed>

/** The same, but that a shared group stays whole. */
export const marksAndShared = (drawing: Drawing, map: Affine): ByLayer<PlacedOrShared> =>
  sorted(drawing, map, true)

type PlacedOrShared = Placed | Placed<SharedGroup>

const sorted = (drawing: Drawing, map: Affine, isKept: boolean): ByLayer<PlacedOrShared> => {
  const all: Record<Layer, PlacedOrShared[]> = { note: [], joint: [], datum: [], mark: [], cut: [] }
  const walk = (marks: Drawing, frame: Affine): void => {
    for (const mark of marks)
      if (mark.kind !== 'group') all[mark.layer].push({ mark, map: frame })
      else {
        const own = affineThen(mark.map, frame)
        if (isKept && mark.shared) all[mark.shared].push({ mark, map: own })
        else walk(mark.marks, own)
      }
  }
  walk(drawing, map)
  return all
}
