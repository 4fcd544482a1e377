import { near, type Pattern, type Sizes } from './saw-job.ts'

/** What a search comes to: a plan, the proof that there is none, or neither within the steps allowed. */
export type Found =
  | { readonly kind: 'plan'; readonly patterns: readonly Pattern[] }
  | { readonly kind: 'none' | 'open' }

/**
 * Boards for all pieces that cost `most` or less. The longest piece left goes on a board of each kind with every filling that
 * takes no further piece; what the wood still missing costs at the least tells where to turn back. Fillings that leave room
 * need not be tried: a piece can always be brought forward to an earlier board.
 */
export const searchPlan = (sizes: Sizes, most: number, steps: number): Found => {
  const { pieces, rooms, costs, whole } = sizes
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b]! - pieces[a]!)
  const rate = Math.min(...rooms.map((room, b) => costs[b]! / room), ...wholeRates(sizes))
  const left = [...sizes.counts]
  const plan: Pattern[] = []
  /** costs at which what is left was tried in vain */
  const dead = new Map<string, number>()
  let step = 0
  let wood = left.reduce((sum, n, i) => sum + n * pieces[i]!, 0)

  const from = (spent: number): boolean => {
    const first = order.find((i) => left[i]! > 0)
    if (first === undefined) return true
    if (spent + wood * rate > most + near) return false
    const key = left.join()
    if ((dead.get(key) ?? Number.POSITIVE_INFINITY) <= spent + near) return false
    if (++step > steps) return false
    for (const pattern of fillings(first, spent)) {
      take(pattern, 1)
      plan.push(pattern)
      if (from(spent + costs[pattern.board]!)) return true
      plan.pop()
      take(pattern, -1)
      if (step > steps) return false
    }
    dead.set(key, spent)
    return false
  }

  const take = ({ counts }: Pattern, sign: 1 | -1): void =>
    counts.forEach((n, i) => {
      left[i]! -= sign * n
      wood -= sign * n * pieces[i]!
    })

  /** Least waste for its money first. */
  const fillings = (first: number, spent: number): readonly Pattern[] =>
    [
      ...whole
        .filter(({ counts }) => counts[first]! > 0)
        .map((pattern) => ({ pattern, waste: costs[pattern.board]! - pieces[first]! * rate })),
      ...costs.flatMap((cost, board) => {
        // wood that this board may leave unused at the most
        const idle = (most + near - spent - cost) / rate - wood
        return boardFillings(sizes, board, { order, left, first }, idle).map(({ pattern, used }) => ({
          pattern,
          waste: cost - used * rate,
        }))
      }),
    ]
      .sort((a, b) => a.waste - b.waste)
      .map(({ pattern }) => pattern)

  if (from(0)) return { kind: 'plan', patterns: plan }
  return { kind: step > steps ? 'open' : 'none' }
}

/** Pieces that are wanted: the longest first, how many are left of each, the longest left. */
interface PiecesLeft {
  readonly order: readonly number[]
  readonly left: readonly number[]
  readonly first: number
}

/** Every filling of a board with the longest piece left that takes no further one, and the wood it uses; it may leave `idle` of it, mm. */
const boardFillings = (
  { pieces, rooms }: Sizes,
  board: number,
  { order, left, first }: PiecesLeft,
  idle: number,
): readonly { readonly pattern: Pattern; readonly used: number }[] => {
  const found: { readonly pattern: Pattern; readonly used: number }[] = []
  const counts: number[] = pieces.map(() => 0)
  const fill = (at: number, room: number): void => {
    const next = order.findIndex((i, k) => k >= at && left[i]! - counts[i]! > 0 && pieces[i]! <= room + near)
    if (next < 0) {
      const full = order.every((i) => left[i]! === counts[i]! || pieces[i]! > room + near)
      const used = rooms[board]! - room
      if (full && used + idle >= -near) found.push({ pattern: { board, counts: [...counts] }, used })
      return
    }
    const i = order[next]!
    const fits = Math.min(left[i]!, Math.floor((room + near) / pieces[i]!))
    for (let n = fits; n >= (i === first ? 1 : 0); n--) {
      counts[i] = n
      fill(next + 1, room - n * pieces[i]!)
    }
    counts[i] = 0
  }
  if (pieces[first]! <= rooms[board]! + near) fill(order.indexOf(first), rooms[board]!)
  return found
}

/** What wood costs at the least in pieces that take a whole board. */
const wholeRates = ({ pieces, costs, whole }: Sizes): readonly number[] =>
  whole.map(({ board, counts }) => costs[board]! / pieces[counts.indexOf(1)]!)
