import type { Drawing, Layer, Mark } from '../drawing/drawing.ts'
import { type Affine, affineThen } from '../geometry/affine.ts'

export type PlainMark = Exclude<Mark, { kind: 'group' }>

/** A mark with the map that takes its own frame to the page. */
export interface Placed<M extends PlainMark = PlainMark> {
  readonly mark: M
  readonly map: Affine
}

type ByLayer<T> = Readonly<Record<Layer, readonly T[]>>

/** The marks of a drawing, groups opened, sorted by layer in drawing order; order within a layer is kept. */
export const marksByLayer = (drawing: Drawing, map: Affine): ByLayer<Placed> =>
  sorted(drawing, map, false) as ByLayer<Placed>

/** Groups of marks that are alike in many places. */
export type SharedGroup = Extract<Mark, { kind: 'group' }>

/** A shared group with the map that takes its marks' frame to the page. */
export interface PlacedGroup {
  readonly mark: SharedGroup
  readonly map: Affine
}

/** The same, but that a shared group stays whole. */
export const marksAndShared = (drawing: Drawing, map: Affine): ByLayer<Placed | PlacedGroup> =>
  sorted(drawing, map, true)

const sorted = (drawing: Drawing, map: Affine, isKept: boolean): ByLayer<Placed | PlacedGroup> => {
  const all: Record<Layer, (Placed | PlacedGroup)[]> = { note: [], joint: [], datum: [], mark: [], cut: [] }
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
