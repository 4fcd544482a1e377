import { textWidth } from '../../drawing/text-width.ts'
import { letters } from '../../pattern/pens.ts'
import { onTick, type StripMark, type StripRow } from '../../pattern/story-strip.ts'
import { type StripPiece, stripOver } from './strip-pieces.ts'

/** Words of a mark or an edge: from where to where along the strip, and how deep from its edge. mm */
export interface MarkWords {
  readonly x: number
  readonly end: number
  readonly deep: number
  readonly words: string
}

/** Beside the short ticks, and past the rings where only long ticks reach. mm */
const depths = { outer: 0.5, inner: 4.6 } as const

/** From a mark to its words, and from words to whatever else is there, mm. */
const off = { mark: 1.3, other: 0.7 } as const

/** An edge's name keeps so far off the words of marks, mm; a piece so long has it at both ends. */
const edgeOff = 2.5
const twiceFrom = 150

/**
 * Words of the marks of one edge, none over another or over a mark. A mark without room for its name and its distance goes
 * with one of them, a ring or the edge of a sheet without words.
 */
export const rowWords = (
  marks: readonly StripMark[],
  piece: Omit<StripPiece, 'strip'>,
): readonly MarkWords[] => {
  const { from, to, number, count } = piece
  const set: MarkWords[] = []
  // beyond a joint the piece beside it has the words
  const own = marks.filter(({ at }) => at >= from && (number === count || at < to))
  const ticksFirst = [...own].sort((a, b) => rank(a) - rank(b))
  for (const mark of ticksFirst) {
    const tries = wordsOf(mark).map((words) => placesOf(mark, words))
    const free = (one: MarkWords): boolean =>
      isFree(one, marks, set, off.other) && (one.words !== mark.figure || isNearest(one, mark, marks))
    const within = ({ x, end }: MarkWords, over: number): boolean =>
      x >= from - over + 0.5 && end <= to + over - 0.5
    // what lies beyond a joint is covered or cut off: words are set there rather than none
    const named = mark.label !== null
    const place =
      tries.flat().find((one) => free(one) && within(one, 0)) ??
      (named
        ? (tries.flat().find((one) => free(one) && within(one, stripOver)) ??
          (mark.sign === 'tick' ? tries.at(-1)!.at(-1) : undefined))
        : undefined)
    if (place) set.push(place)
  }
  return set
}

/** Named ticks first, then rings, then the nameless. */
const rank = ({ sign, label }: StripMark): number => (label === null ? 2 : sign === 'ring' ? 1 : 0)

/** What is tried, the fullest first: what a ring or the edge of a sheet is stands in the legend, so their distance says more. */
const wordsOf = ({ sign, label, figure, aside }: StripMark): readonly string[] => {
  if (figure === null) return label === null ? [] : [label]
  const brief = aside === undefined ? [figure] : [`${aside} · ${figure}`, figure]
  if (label === null) return brief
  return [`${label} · ${figure}`, ...(sign === 'ring' || aside !== undefined ? brief : []), label]
}

/** Beside a mark; past a ring too. */
const placesOf = ({ at, sign }: StripMark, words: string): readonly MarkWords[] => {
  const wide = textWidth(words, letters.mark, 'regular')
  const place = (x: number, deep: number): MarkWords => ({ x, end: x + wide, deep, words })
  return [
    ...[depths.outer, depths.inner].flatMap((deep) =>
      [at + off.mark, at - off.mark - wide].map((x) => place(x, deep)),
    ),
    ...(sign === 'ring' ? [place(at - wide / 2, depths.inner)] : []),
  ]
}

const isFree = (
  { x, end, deep }: MarkWords,
  marks: readonly StripMark[],
  set: readonly MarkWords[],
  apart: number,
): boolean =>
  marks.every(
    ({ at, sign }) =>
      (deep === depths.inner && sign === 'ring') || at <= x - off.other || at >= end + off.other,
  ) && set.every((one) => one.deep !== deep || one.end < x - apart || one.x > end + apart)

/** A figure alone is read of the mark that it stands nearest to, along the strip: any other lies twice as far off. */
const isNearest = ({ x, end }: MarkWords, own: StripMark, marks: readonly StripMark[]): boolean => {
  const away = (at: number): number => Math.max(x - at, at - end, 0)
  return marks.every(({ at }) => Math.abs(at - own.at) <= onTick || away(at) > 2 * away(own.at))
}

/** The edge's own name, near the beginning of a piece and, on a long one, near its end; where nothing else stands. */
export const edgeWords = (
  row: StripRow,
  piece: StripPiece,
  marks: readonly StripMark[],
  taken: readonly MarkWords[],
): readonly MarkWords[] => {
  const { from, to } = piece
  const set: MarkWords[] = []
  const placed = (words: string, back: boolean): MarkWords | undefined => {
    const wide = textWidth(words, letters.mark, 'bold')
    const [first, last] = [from + 1.2, to - 1.2 - wide]
    if (words !== row.edge && last < first) return undefined
    const steps = Math.max(0, Math.floor((last - first) / 2))
    const others = [...taken, ...set]
    for (const deep of [depths.outer, depths.inner])
      for (let i = 0; i <= steps; i++) {
        const x = back ? last - 2 * i : first + 2 * i
        const one = { x, end: x + wide, deep, words }
        if (isFree(one, marks, others, edgeOff)) return one
      }
    return undefined
  }
  const tries = edgeTries(row, piece)
  for (const back of to - from >= twiceFrom ? [false, true] : [false])
    for (const words of tries) {
      const place = placed(words, back)
      if (!place) continue
      set.push(place)
      break
    }
  return set
}

/** With the rows for which marks of the piece do not hold, else with a word that there are some. */
const edgeTries = ({ edge, not }: StripRow, { from, to }: StripPiece): readonly string[] => {
  const here = (not ?? []).filter(({ places }) => places.some((at) => at >= from && at <= to))
  if (here.length === 0) return [edge]
  return [`${edge}, not ${here.map(({ where }) => where).join(', ')}`, `${edge}, not all rows`, edge]
}
