import { type Drawing, type TextOptions, text } from '../../../drawing/drawing.ts'
import type { Point } from '../../../geometry/point.ts'
import { viewStyle } from '../view.ts'

/** A few words in a picture of an act, their middle at a place. */
export const word = (at: Point, said: string, style: Pick<TextOptions, 'align' | 'face'> = {}): Drawing => [
  text('note', at, viewStyle.size, said, { align: 'middle', ...style }),
]
