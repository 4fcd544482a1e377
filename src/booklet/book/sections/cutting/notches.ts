import { curvedOf } from '../../../../design/kind-traits.ts'
import type { SolvedQuarter } from '../../../../ramp/ramp.ts'
import { notchSizes } from '../../../../ramp/side/notch-sizes.ts'
import { notchView, notchWindow } from '../../../views/notch-view.ts'
import { type Block, beside, type FixedBlock, named, stack, words } from '../../block.ts'
import { type Book, leastShare, ofRamp } from '../../book.ts'
import { figure } from '../../figure.ts'

const notched = ({ solved }: Book): readonly SolvedQuarter[] =>
  curvedOf(solved.ramps).filter(({ coping }) => coping)

/** Whether a design has one notch alone, whose corner is drilled: it is drawn where that is told. */
export const aloneNotched = (book: Book): boolean => {
  const [only, ...others] = notched(book)
  return only?.coping?.seat === 'square' && others.length === 0
}

/** Two notches beside each other. */
export const notches = (book: Book): readonly Block[] => {
  const half = (book.width - betweenNotches) / 2
  const cut = aloneNotched(book) ? [] : notched(book)
  if (cut.length < 2) return cut.flatMap((ramp) => notchBlocks(book, ramp, book.width))
  return cut.flatMap((ramp, i) => {
    const other = cut[i + 1]
    if (i % 2 > 0) return []
    const left = stack(notchBlocks(book, ramp, half))
    const row = other ? beside(left, stack(notchBlocks(book, other, half)), half + betweenNotches) : left
    return [i === 0 ? named('notches', row) : row]
  })
}
export const betweenNotches = 6

/** The notch of a ramp that has one, and what is measured of it. */
export const notchBlocks = (
  book: Book,
  ramp: SolvedQuarter,
  width: number,
): readonly [drawing: FixedBlock, sizes: FixedBlock] => {
  const { units, show } = book
  const coping = ramp.coping!
  const { box } = notchWindow(ramp, coping, 1)
  const { back, bottom, floor } = notchSizes(ramp.transition, coping, ramp.length)
  return [
    figure(
      ofRamp(book, 'The notch: dashed is what is sawn away', ramp),
      (ratio) => notchView(ramp, coping, units, ratio),
      book,
      { width, height: (width < book.width ? 56 : 72) * Math.max(leastShare, book.share) },
      { width: box.x1 - box.x0, height: box.y1 - box.y0 },
    ),
    words(
      `Once the notch is sawn its lip is gone: measure its wall ${show(back)} from the back edge, its ${floor === null ? 'lowest point' : 'floor'} ${show(bottom)} up from the bottom edge${floor === null ? '' : `, and ${show(floor)} along the floor from the wall to the curve`}.`,
      width,
    ),
  ]
}
