import { affineApply, type ViewPart } from '../../index.ts'

export interface Point {
  readonly x: number
  readonly y: number
}

type Marks = ViewPart['marks']

/** Of a letter, parts of its height: near enough to keep off it. */
const letterWidth = 0.72
/** From one point of a word to the next, mm of the drawing. */
const apart = 2

/** Points along the middle of all that is to be read in marks, mm of the drawing. */
export const wordPoints = (marks: Marks): readonly Point[] =>
  marks.flatMap((mark) => {
    if (mark.kind === 'group') return wordPoints(mark.marks).map((point) => affineApply(mark.map, point))
    if (mark.kind !== 'text') return []
    const { at, angle, size, align, text } = mark
    const long = text.length * size * letterWidth
    const from = align === 'left' ? 0 : align === 'middle' ? -long / 2 : -long
    const count = Math.max(1, Math.ceil(long / apart))
    return Array.from({ length: count + 1 }, (_, i) => {
      const along = from + (long * i) / count
      return {
        x: at.x + along * Math.cos(angle) - (size / 2) * Math.sin(angle),
        y: at.y + along * Math.sin(angle) + (size / 2) * Math.cos(angle),
      }
    })
  })

/** Corners of what is filled in marks, mm of the drawing: heads of arrows. */
export const headPoints = (marks: Marks): readonly Point[] =>
  marks.flatMap((mark) => {
    if (mark.kind === 'group') return headPoints(mark.marks).map((point) => affineApply(mark.map, point))
    return mark.kind === 'fill' ? [mark.path.start, ...mark.path.pieces.map(({ to }) => to)] : []
  })
