import type { Drawing, Layer, Mark, SharedGroup } from '../drawing/drawing.ts'
import { type Affine, affineThen } from '../geometry/affine.ts'

export type PlainMark = Exclude<Mark, { kind: 'group' }>

/** A mark with the map that takes its own frame to the page; of a shared group the frame of its marks. */
export interface Placed<M extends PlainMark | SharedGroup = PlainMark> {
  readonly mark: M
  readonly map: Affine
}

type PlacedOrShared = Placed | Placed<SharedGroup>

type ByLayer<T> = Readonly<Record<Layer, readonly T[]>>

/**
 * The marks of a drawing, groups opened but shared ones, sorted by layer in drawing order; order within a layer is kept. A shared group lies
 * in the layer of its marks.
 */
export const marksAndShared = (drawing: Drawing, map: Affine): ByLayer<PlacedOrShared> => {
  const all: Record<Layer, PlacedOrShared[]> = { note: [], joint: [], datum: [], mark: [], cut: [] }
  const walk = (marks: Drawing, frame: Affine): void => {
    for (const mark of marks)
      if (mark.kind !== 'group') all[mark.layer].push({ mark, map: frame })
      else {
        const own = affineThen(mark.map, frame)
        if (mark.shared) all[mark.shared].push({ mark, map: own })
        else walk(mark.marks, own)
      }
  }
  walk(drawing, map)
  return all
}

/** The same with all groups opened. */
export const marksByLayer = (drawing: Drawing, map: Affine): ByLayer<Placed> => {
  const { note, joint, datum, mark, cut } = marksAndShared(drawing, map)
  return {
    note: note.flatMap(opened),
    joint: joint.flatMap(opened),
    datum: datum.flatMap(opened),
    mark: mark.flatMap(opened),
    cut: cut.flatMap(opened),
  }
}

const opened = ({ mark, map }: PlacedOrShared): readonly Placed[] =>
  mark.kind === 'group' ? mark.marks.map((one) => ({ mark: one, map })) : [{ mark, map }]
