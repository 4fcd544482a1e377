import { relax } from './relaxation.ts'
import { near, type Pattern, patternCost, type SawJob, type Sizes, sizesOf } from './saw-job.ts'
import { searchPlan } from './search.ts'

export interface Cutting {
  /** one for each board, those alike together */
  readonly patterns: readonly Pattern[]
  readonly cost: number
  /** no plan costs less than this */
  readonly bound: number
}

/** Steps of one search; a plan for a real ramp takes some hundreds. */
const steps = 40_000

/**
 * The boards that cost least for what is wanted. `cost` equal to `bound` is proven the least; that is so but for instances made
 * to be hard. Throws RangeError for a piece longer than every board.
 */
export const cutBoards = (job: SawJob): Cutting => {
  const sizes = sizesOf(job)
  if (job.wanted.length === 1) return cutAlike(sizes)
  const whole = greedy(sizes)
  const wood = sizes.pieces.reduce((sum, piece, i) => sum + piece * sizes.counts[i]!, 0)
  const cheap = Math.min(...sizes.costs.map((cost, b) => cost / Math.max(sizes.rooms[b]!, longest(job, b))))
  const ofWood = payable(sizes.costs, wood * cheap)
  const cost = patternCost(sizes, whole)
  if (cost <= ofWood + near) return cuttingOf(sizes, whole, ofWood)
  // were all pieces as short as the shortest, no more boards would be needed
  const count = sizes.counts.reduce((sum, n) => sum + n, 0)
  const { least: ofCount } = leastAlike(sizes, Math.min(...sizes.pieces), count)
  if (cost <= ofCount + near) return cuttingOf(sizes, whole, ofCount)
  const { bound, used } = relax(sizes)
  let low = payable(sizes.costs, bound)
  let best: readonly Pattern[] = whole
  // whole boards of the relaxation, then fewer and fewer of them, the rest searched
  for (let less = 0; less < 4 && patternCost(sizes, best) > low + near; less++) {
    const kept = used.flatMap(({ pattern, times }) =>
      Array.from({ length: Math.max(0, Math.floor(times + near) - less) }, () => pattern),
    )
    const rest = without(sizes, kept)
    const found = searchPlan(rest, low - patternCost(sizes, kept), steps)
    const tail = found.kind === 'plan' ? found.patterns : greedy(rest)
    if (patternCost(sizes, [...kept, ...tail]) < patternCost(sizes, best) - near) best = [...kept, ...tail]
  }
  // what is left between the two is searched whole, from below
  while (patternCost(sizes, best) > low + near) {
    const found = searchPlan(sizes, low, steps)
    if (found.kind === 'plan') best = found.patterns
    if (found.kind === 'open') break
    if (found.kind === 'none') low = payable(sizes.costs, low + 2 * near)
  }
  return cuttingOf(sizes, best, low)
}

/** The least that so many pieces of one length cost: for one piece, for two, and so on; and the board that the last of each goes on. */
const leastAlike = (sizes: Sizes, piece: number, count: number) => {
  const ways = [
    ...sizes.rooms.map((room, board) => ({ board, most: Math.floor((room + near) / piece) })),
    ...sizes.whole.map(({ board }) => ({ board, most: 1 })),
  ].filter(({ most }) => most > 0)
  if (ways.length === 0) throw new RangeError(`no board is long enough for a piece of ${piece}`)
  const least = [0]
  const last: { readonly board: number; readonly most: number }[] = []
  for (let n = 1; n <= count; n++) {
    const costs = ways.map(({ board, most }) => sizes.costs[board]! + least[Math.max(0, n - most)]!)
    const best = costs.indexOf(Math.min(...costs))
    least.push(costs[best]!)
    last[n] = ways[best]!
  }
  return { least: least[count]!, last }
}

/** One length alone, as most ramps want it. */
const cutAlike = (sizes: Sizes): Cutting => {
  const [piece, count] = [sizes.pieces[0]!, sizes.counts[0]!]
  const { least, last } = leastAlike(sizes, piece, count)
  const patterns: Pattern[] = []
  for (let n = count; n > 0; ) {
    const { board, most } = last[n]!
    patterns.push({ board, counts: [Math.min(n, most)] })
    n -= most
  }
  return cuttingOf(sizes, patterns, least)
}

/** A board's whole length counts where a piece takes it as it comes. */
const longest = ({ boards, wanted, kerf }: SawJob, b: number): number =>
  Math.max(
    0,
    ...wanted.filter(({ length }) => length <= boards[b]!.length + near).map(({ length }) => length + kerf),
  )

const cuttingOf = (sizes: Sizes, patterns: readonly Pattern[], bound: number): Cutting => {
  const key = ({ board, counts }: Pattern): string => `${board}:${counts.join()}`
  const keys = [...new Set(patterns.map(key))]
  return {
    patterns: keys.flatMap((own) => patterns.filter((pattern) => key(pattern) === own)),
    cost: patternCost(sizes, patterns),
    bound,
  }
}

/** What is still wanted; no count falls below 0. */
const without = (sizes: Sizes, patterns: readonly Pattern[]): Sizes => ({
  ...sizes,
  counts: sizes.counts.map((n, i) =>
    Math.max(0, n - patterns.reduce((sum, { counts }) => sum + counts[i]!, 0)),
  ),
})

/** Board by board: the one that wastes least money when it is filled with the longest first. */
const greedy = (sizes: Sizes): readonly Pattern[] => {
  const { pieces, rooms, costs } = sizes
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b]! - pieces[a]!)
  const left = [...sizes.counts]
  const plan: Pattern[] = []
  const filled = (pattern: Pattern): number => pattern.counts.reduce((sum, n, i) => sum + n * pieces[i]!, 0)
  for (;;) {
    const first = order.find((i) => left[i]! > 0)
    if (first === undefined) return plan
    const ways = [
      ...rooms.flatMap((room, board) => {
        let free = room
        const counts = pieces.map(() => 0)
        for (const i of order) {
          counts[i] = Math.min(left[i]!, Math.floor((free + near) / pieces[i]!))
          free -= counts[i]! * pieces[i]!
        }
        return counts[first]! > 0 ? [{ board, counts }] : []
      }),
      ...sizes.whole.filter(({ counts }) => counts[first]! > 0),
    ]
    if (ways.length === 0) throw new RangeError(`no board is long enough for a piece of ${pieces[first]}`)
    const each = (way: Pattern): number => costs[way.board]! / filled(way)
    const best = ways.reduce((a, b) => (each(b) < each(a) - 1e-12 ? b : a))
    plan.push(best)
    best.counts.forEach((n, i) => {
      left[i]! -= n
    })
  }
}

/** The least sum of whole boards that is `cost` or more. */
const payable = (costs: readonly number[], cost: number): number => {
  const kinds = [...new Set(costs)].sort((a, b) => b - a)
  // more kinds than this are summed for longer than it helps
  if (kinds.length > 4) return cost
  const from = (k: number, rest: number): number => {
    const own = kinds[k]!
    const most = Math.max(0, Math.ceil((rest - near) / own))
    if (k === kinds.length - 1) return most * own
    let least = Number.POSITIVE_INFINITY
    for (let n = 0; n <= most; n++) least = Math.min(least, n * own + from(k + 1, rest - n * own))
    return least
  }
  return from(0, cost)
}
