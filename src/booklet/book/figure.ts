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
  /** right under a head that says the same: its name is not drawn */
  readonly unnamed?: boolean
  /** at no larger a scale, mm on paper for one of the thing */
  readonly most?: number
}

/** A drawing with the scale that it has. */
export interface Figure extends FixedBlock {
  readonly ratio: number
}

const nameSize = 2.5
const nameRoom = 5
const barRoom = 8
const barWidth = 45
/** Of what stands around a thing so much stays at the next smaller scale, at least. */
const kept = 0.7

/** A view at the largest usual scale at which it fits, its name above it and a scale bar below. */
export const figure = (
  name: string,
  at: (ratio: number) => View,
  { units, drawn }: Pick<Book, 'units' | 'drawn'>,
  room: FigureRoom,
  /** the thing's own width and height, mm: asked first, since most scales are too large */
  thing: { readonly width: number; readonly height: number },
): Figure => {
  const above = room.unnamed ? 0 : nameRoom
  const inner = { width: room.width, height: room.height - above - barRoom }
  const viewAt = (ratio: number): View => drawn(`${name} ${ratio}`, () => at(ratio))
  // dimensions and notes around the thing hardly shrink with it: what they took at a larger scale tells that the next is too large
  let around = { width: 0, height: 0 }
  const most = room.most ?? Number.POSITIVE_INFINITY
  const fits = ({ ratio }: Scale): boolean => {
    if (ratio > most) return false
    const [wide, high] = [thing.width * ratio, thing.height * ratio]
    if (wide + kept * around.width > inner.width || high + kept * around.height > inner.height) return false
    const { box } = viewAt(ratio)
    const [width, height] = [box.x1 - box.x0, box.y1 - box.y0]
    around = { width: Math.max(0, width - wide), height: Math.max(0, height - high) }
    return width <= inner.width && height <= inner.height
  }
  const scale = firstScale(units, fits)
  const view = viewAt(scale.ratio)
  const { box } = view
  const height = box.y1 - box.y0 + above + barRoom + 3
  // in the middle, but never off the left edge
  const left = Math.max(0, (room.width - (box.x1 - box.x0)) / 2)
  return {
    kind: 'fixed',
    ratio: scale.ratio,
    height,
    withNext: false,
    marks: ({ x, y }) => [
      ...(room.unnamed ? [] : [text('note', { x, y: y - nameSize }, nameSize, name, { face: 'bold' })]),
      group(affineTranslate(x + left - box.x0, y - above - box.y1), viewMarks(view)),
      ...scaleBar({ x: x + 1.5, y: y - height + 4 }, scale, units, barWidth, viewStyle).marks,
    ],
  }
}
