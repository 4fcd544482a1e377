import { textWidth } from '../drawing/text-width.ts'
import { letters } from '../pattern/pens.ts'
import type { StripMark } from '../pattern/story-strip.ts'
import { type StripPiece, stripOver } from './strip-pieces.ts'

/** Words of a mark: where they begin along the strip, and how deep from its edge. mm */
export interface MarkWords {
  readonly x: number
  readonly deep: number
  readonly words: string
}

/** Beside the short ticks, and past the rings where only long ticks reach. mm */
const depths = { outer: 0.5, inner: 4.5 } as const

/** From a mark to its words, and from words to whatever else is there, mm. */
const off = { tick: 0.8, ring: 1.3, other: 0.7 } as const

/** Words of the marks of one edge, none over another or over a mark; a ring without room for its words goes without. */
export const rowWords = (
  marks: readonly StripMark[],
  { from, to, number, count }: StripPiece,
): readonly MarkWords[] => {
  const set: (MarkWords & { readonly end: number })[] = []
  // beyond a joint the piece beside it has the words
  const own = marks.filter(({ at, label }) => label !== null && at >= from && (number === count || at < to))
  const ticksFirst = [...own].sort((a, b) => Number(a.sign === 'ring') - Number(b.sign === 'ring'))
  for (const mark of ticksFirst) {
    const words = mark.label!
    const wide = textWidth(words, letters.mark, 'regular')
    const places = [depths.outer, ...(mark.sign === 'tick' ? [depths.inner] : [])].flatMap((deep) =>
      [mark.at + off[mark.sign], mark.at - off[mark.sign] - wide].map((x) => ({
        x,
        end: x + wide,
        deep,
        words,
      })),
    )
    const free = ({ x, end, deep }: (typeof places)[number]): boolean =>
      marks.every(
        ({ at, sign }) =>
          (deep === depths.inner && sign === 'ring') || at <= x - off.other || at >= end + off.other,
      ) && set.every((one) => one.deep !== deep || one.end < x - off.other || one.x > end + off.other)
    const within = ({ x, end }: (typeof places)[number], over: number): boolean =>
      x >= from - over + 0.5 && end <= to + over - 0.5
    const place =
      places.find((one) => free(one) && within(one, 0)) ??
      places.find((one) => free(one) && within(one, stripOver)) ??
      (mark.sign === 'tick' ? places.at(-1) : undefined)
    if (place) set.push(place)
  }
  return set
}
