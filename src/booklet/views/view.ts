import { type DraftStyle, lineTypes } from '../../drafting/line-types.ts'
import type { Drawing } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Point } from '../../geometry/point.ts'

/** A piece of a view: what it shows, and the key of the design file that says it, where one does. */
export interface ViewPart {
  readonly name: string
  readonly key?: string
  readonly marks: Drawing
}

/** A drawing to scale on paper, mm; the thing's own origin at 0,0. */
export interface View {
  readonly parts: readonly ViewPart[]
  readonly box: Box
}

/** Figures 2.5 mm high; lines of 0.18 and 0.35 mm, since the things are drawn small. */
export const viewStyle: DraftStyle = { layer: 'note', size: 2.5, lines: lineTypes(0.18) }

/** A point of the thing on paper. */
export const scaled = ({ x, y }: Point, ratio: number): Point => ({ x: x * ratio, y: y * ratio })

export const viewOf = (parts: readonly ViewPart[]): View => {
  const box = drawingBounds(parts.flatMap(({ marks }) => marks))
  if (!box) throw new RangeError('a view of nothing')
  return { parts, box }
}

export const viewMarks = ({ parts }: View): Drawing => parts.flatMap(({ marks }) => marks)
