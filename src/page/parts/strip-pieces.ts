import type { StoryStrip } from '../../pattern/story-strip.ts'

/** A part of a strip that fits on a page. */
export interface StripPiece {
  readonly strip: StoryStrip
  readonly number: number
  readonly count: number
  /** along the strip: where it is taped to the pieces before and behind */
  readonly from: number
  readonly to: number
}

/** What a piece carries beyond its joint lines, mm. */
export const stripOver = 6

/** Across a strip, mm: how far a long tick reaches in, what each row of marks takes with its words, and the words between them. */
export const stripDepth = { tick: 6, row: 7, words: 6.2 } as const

export const stripHeight = ({ rows }: StoryStrip): number => rows.length * stripDepth.row + stripDepth.words

/** A piece no shorter than this can be taped straight; a joint keeps off marks and their words where it can. mm */
const leastPiece = 70
const clear = { before: 24, behind: stripOver + 2 }
const step = 2

/** The pieces of a strip on a page with so much room along it, mm: as few as there can be. */
export const stripPieces = (strip: StoryStrip, room: number): readonly StripPiece[] => {
  const most = room - 2 * stripOver
  const count = Math.max(1, Math.ceil(strip.length / most - 1e-9))
  const ends = [0]
  for (let left = count - 1; left > 0; left--) ends.push(jointOf(strip, ends.at(-1)!, most, left))
  ends.push(strip.length)
  return ends.slice(1).map((to, i) => ({ strip, number: i + 1, count, from: ends[i]!, to }))
}

/** The farthest place that keeps clear and leaves no more than `left` pieces hold; else the farthest. */
const jointOf = ({ length, rows }: StoryStrip, from: number, most: number, left: number): number => {
  const marks = rows.flatMap((row) => row?.marks ?? [])
  const least = Math.max(length - left * most, from + leastPiece)
  const farthest = Math.max(least, Math.min(from + most, length - leastPiece))
  for (let to = farthest; to >= least; to -= step)
    if (marks.every(({ at }) => at < to - clear.before || at > to + clear.behind)) return to
  return farthest
}
