import { firstScale, type Scale } from '../../drafting/scale.ts'
import { scaleBar } from '../../drafting/scale-bar.ts'
import { group, text } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { type View, viewMarks, viewStyle } from '../views/view.ts'
import type { FixedBlock } from './block.ts'
import type { Book } from './book.ts'

/** Room for a drawing with its scale bar and name, mm. */
export interface FigureRoom {
  readonly width: number
  readonly height: number
}

const nameSize = 2.5
const nameRoom = 5
const barRoom = 8
const barWidth = 45

/** A view at the largest usual scale at which it fits, its name above it and a scale bar below. */
export const figure = (
  name: string,
  at: (ratio: number) => View,
  { units, drawn }: Pick<Book, 'units' | 'drawn'>,
  room: FigureRoom,
  /** the thing's own width and height, mm: asked first, since most scales are too large */
  thing: { readonly width: number; readonly height: number },
): FixedBlock => {
  const inner = { width: room.width, height: room.height - nameRoom - barRoom }
  const viewAt = (ratio: number): View => drawn(`${name} ${ratio}`, () => at(ratio))
  const fits = ({ ratio }: Scale): boolean => {
    if (thing.width * ratio > inner.width || thing.height * ratio > inner.height) return false
    const { box } = viewAt(ratio)
    return box.x1 - box.x0 <= inner.width && box.y1 - box.y0 <= inner.height
  }
  const scale = firstScale(units, fits)
  const view = viewAt(scale.ratio)
  const { box } = view
  const height = box.y1 - box.y0 + nameRoom + barRoom + 3
  // in the middle, but never off the left edge
  const left = Math.max(0, (room.width - (box.x1 - box.x0)) / 2)
  return {
    kind: 'fixed',
    height,
    withNext: false,
    marks: ({ x, y }) => [
      text('note', { x, y: y - nameSize }, nameSize, name, { face: 'bold' }),
      group(affineTranslate(x + left - box.x0, y - nameRoom - box.y1), viewMarks(view)),
      ...scaleBar({ x: x + 1.5, y: y - height + 4 }, scale, units, barWidth, viewStyle).marks,
    ],
  }
}
