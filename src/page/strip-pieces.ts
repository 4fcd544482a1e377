import type { StoryStrip } from '../pattern/story-strip.ts'

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

/** A piece no shorter than this can be taped straight; a joint keeps off marks and their words where it can. mm */
const leastPiece = 70
const clear = { before: 24, behind: stripOver + 2 }

/** How far back a joint is moved to find such a place, and by which steps, mm. */
const back = { most: 60, step: 2 }

/** The pieces of a strip on a page with so much room along it, mm. */
export const stripPieces = (strip: StoryStrip, room: number): readonly StripPiece[] => {
  const ends = [0]
  const last = (): number => ends.at(-1)!
  while (strip.length - last() > room - 2 * stripOver + 1e-9)
    ends.push(jointOf(strip, last(), room - 2 * stripOver))
  ends.push(strip.length)
  return ends.slice(1).map((to, i) => ({ strip, number: i + 1, count: ends.length - 1, from: ends[i]!, to }))
}

const jointOf = ({ length, rows }: StoryStrip, from: number, most: number): number => {
  const farthest = Math.max(from + most / 2, Math.min(from + most, length - leastPiece))
  const marks = rows.flatMap((row) => row?.marks ?? [])
  for (let to = farthest; to > Math.max(from + most / 2, farthest - back.most); to -= back.step)
    if (marks.every(({ at }) => at < to - clear.before || at > to + clear.behind)) return to
  return farthest
}
