/** What is sawn from boards, lengths in any one unit. */
export interface SawJob {
  /** lengths wanted, each so many times; no two alike */
  readonly wanted: readonly Wanted[]
  /** lengths that can be bought, any number of each */
  readonly boards: readonly Board[]
  /** wood that every cut turns to dust */
  readonly kerf: number
  /** cut off either end of a board, its kerf included, before the first piece and after the last */
  readonly ends: number
}

export interface Wanted {
  readonly length: number
  readonly count: number
}

export interface Board {
  readonly length: number
  readonly cost: number
}

/** What is cut from one board: how many of each wanted length. */
export interface Pattern {
  /** place in `boards` */
  readonly board: number
  readonly counts: readonly number[]
}

/** Lengths as the solver adds them: every piece with one kerf, every board with one more than it needs. */
export interface Sizes {
  readonly pieces: readonly number[]
  readonly counts: readonly number[]
  readonly rooms: readonly number[]
  readonly costs: readonly number[]
  /** pieces that are a board's whole length, ends as they come: nothing else is cut from it */
  readonly whole: readonly Pattern[]
}

/** Sums of lengths this near are the same. */
export const near = 1e-6

export const sizesOf = ({ wanted, boards, kerf, ends }: SawJob): Sizes => {
  const rooms = boards.map(({ length }) => length - 2 * ends + kerf)
  return {
    pieces: wanted.map(({ length }) => length + kerf),
    counts: wanted.map(({ count }) => count),
    rooms,
    costs: boards.map(({ cost }) => cost),
    whole: boards.flatMap((board, b) =>
      wanted.flatMap(({ length }, i): Pattern[] =>
        length <= board.length + near && length + kerf > rooms[b]! + near
          ? [{ board: b, counts: wanted.map((_, k) => (k === i ? 1 : 0)) }]
          : [],
      ),
    ),
  }
}

export const patternCost = ({ costs }: Sizes, patterns: readonly Pattern[]): number =>
  patterns.reduce((sum, { board }) => sum + costs[board]!, 0)
