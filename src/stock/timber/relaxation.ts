import { near, type Pattern, type Sizes } from './saw-job.ts'

/** Boards taken in parts: how often each pattern, and what no whole plan can cost less than. */
export interface Relaxation {
  readonly bound: number
  readonly used: readonly { readonly pattern: Pattern; readonly times: number }[]
}

/** Worth of a pattern over its cost that still counts. */
const gain = 1e-7

/** Rounds until the best worth found so far is told as the bound, which it always is. */
const mostRounds = 3000

/**
 * The linear relaxation, patterns made as they are needed: Gilmore and Gomory, "A linear programming approach to the
 * cutting-stock problem", Operations Research 9 (1961). Bound by Farley's rule (Operations Research 38, 1990), which holds
 * wherever the rounds end. Every piece must fit on some board.
 */
export const relax = (sizes: Sizes): Relaxation => {
  const { pieces, counts, costs, whole } = sizes
  const m = pieces.length
  const basis = pieces.map((_, i) => cheapest(sizes, i))
  const inverse = basis.map(({ counts: own }, i) => pieces.map((_, k) => (k === i ? 1 / own[i]! : 0)))
  const times = basis.map(({ counts: own }, i) => counts[i]! / own[i]!)
  let bound = 0
  for (let round = 0; round < mostRounds; round++) {
    const worth = pieces.map((_, k) =>
      basis.reduce((sum, { board }, r) => sum + costs[board]! * inverse[r]![k]!, 0),
    )
    let [best, over, ratio]: [Pattern | null, number, number] = [null, gain, 1]
    const consider = (pattern: Pattern): void => {
      const value = pattern.counts.reduce((sum, n, i) => sum + n * worth[i]!, 0)
      const cost = costs[pattern.board]!
      ratio = Math.max(ratio, value / cost)
      if (value - cost > over) [best, over] = [pattern, value - cost]
    }
    for (const board of costs.keys()) consider({ board, counts: richest(sizes, board, worth) })
    for (const pattern of whole) consider(pattern)
    bound = Math.max(bound, worth.reduce((sum, w, i) => sum + w * counts[i]!, 0) / ratio)
    if (!best) break
    const entering: Pattern = best
    const column = inverse.map((row) => row.reduce((sum, v, k) => sum + v * entering.counts[k]!, 0))
    let leaving = -1
    for (let r = 0; r < m; r++) {
      if (column[r]! <= 1e-9) continue
      const by = leaving < 0 ? Number.POSITIVE_INFINITY : times[leaving]! / column[leaving]!
      const own = times[r]! / column[r]!
      if (own < by - 1e-12 || (own <= by + 1e-12 && column[r]! > column[leaving]!)) leaving = r
    }
    if (leaving < 0) break
    pivot(inverse, times, column, leaving)
    basis[leaving] = entering
  }
  return { bound, used: basis.map((pattern, r) => ({ pattern, times: Math.max(0, times[r]!) })) }
}

const pivot = (inverse: number[][], times: number[], column: readonly number[], leaving: number): void => {
  const by = column[leaving]!
  const row = inverse[leaving]!.map((v) => v / by)
  const step = times[leaving]! / by
  inverse.forEach((own, r) => {
    if (r === leaving || column[r] === 0) return
    const factor = column[r]!
    for (let k = 0; k < own.length; k++) own[k]! -= factor * row[k]!
    times[r]! -= factor * step
  })
  inverse[leaving] = row
  times[leaving] = step
}

/** One length alone, as often as it is wanted and fits, where a piece comes cheapest. */
const cheapest = ({ pieces, counts, rooms, costs, whole }: Sizes, i: number): Pattern => {
  const alone = (board: number, n: number): Pattern => ({
    board,
    counts: pieces.map((_, k) => (k === i ? n : 0)),
  })
  const ways = [
    ...rooms.flatMap((room, board) => {
      const n = Math.min(counts[i]!, Math.floor((room + near) / pieces[i]!))
      return n > 0 ? [alone(board, n)] : []
    }),
    ...whole.filter((pattern) => pattern.counts[i]! > 0),
  ]
  if (ways.length === 0) throw new RangeError(`no board is long enough for the piece ${i}`)
  const each = ({ board, counts: own }: Pattern): number => costs[board]! / own[i]!
  return ways.reduce((best, way) => (each(way) < each(best) ? way : best))
}

/** The pattern of one board whose pieces are worth most (bounded knapsack, by branch and bound). */
const richest = (
  { pieces, counts, rooms }: Sizes,
  board: number,
  worth: readonly number[],
): readonly number[] => {
  const order = pieces
    .map((_, i) => i)
    .filter((i) => worth[i]! > 0)
    .sort((a, b) => worth[b]! / pieces[b]! - worth[a]! / pieces[a]!)
  let best: number[] = pieces.map(() => 0)
  let most = 0
  const taken: number[] = pieces.map(() => 0)
  const fill = (at: number, room: number, value: number): void => {
    if (value > most + 1e-12) {
      most = value
      best = [...taken]
    }
    const i = order[at]
    if (i === undefined || value + (room + near) * (worth[i]! / pieces[i]!) <= most + 1e-12) return
    for (let n = Math.min(counts[i]!, Math.floor((room + near) / pieces[i]!)); n >= 0; n--) {
      taken[i] = n
      fill(at + 1, room - n * pieces[i]!, value + n * worth[i]!)
    }
    taken[i] = 0
  }
  fill(0, rooms[board]!, 0)
  return best
}
