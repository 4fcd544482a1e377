import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Cutting, cutBoards } from '../../../src/stock/timber/cutting.ts'
import type { SawJob } from '../../../src/stock/timber/saw-job.ts'
import { above, atMost } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'

/** Lengths and how often, `1380×22`. */
const wantedOf = (text: string): SawJob['wanted'] => {
  const counts = new Map<number, number>()
  for (const item of text.trim().split(/[\s·]+/)) {
    const [length, count = '1'] = item.split('×')
    counts.set(Number(length), (counts.get(Number(length)) ?? 0) + Number(count))
  }
  return [...counts].map(([length, count]) => ({ length, count }))
}
const plain = (length: number, text: string): SawJob => ({
  wanted: wantedOf(text),
  boards: [{ length, cost: 1 }],
  kerf: 0,
  ends: 0,
})

/** Adds every board up again from the job alone. */
const assertSawn = ({ wanted, boards, kerf, ends }: SawJob, { patterns, cost }: Cutting): void => {
  for (const { board, counts } of patterns) {
    const cuts = counts.flatMap((n, i) => Array<number>(n).fill(wanted[i]!.length))
    const all = cuts.reduce((sum, cut) => sum + cut, 0)
    const { length } = boards[board]!
    const alone = cuts.length === 1 && all <= length + 1e-6
    if (!alone) atMost(all + (cuts.length - 1) * kerf + 2 * ends, length + 1e-5)
    above(cuts.length, 0)
  }
  wanted.forEach(({ count }, i) => {
    expect(patterns.reduce((sum, { counts }) => sum + counts[i]!, 0)).toBe(count)
  })
  assertNear(
    cost,
    patterns.reduce((sum, { board }) => sum + boards[board]!.cost, 0),
    1e-9,
  )
}

describe('published instances', () => {
  // CC0 sets of ESICUP, or solved again by another solver
  test.each([
    ['ten items in 100, where first-fit-decreasing needs 4', 100, '49 41 34 33 29 26 26 22 20 19', 3],
    [
      'Falkenauer t60_00, twenty triples that fill a bin each',
      100,
      `36.6 26.8 36.6 · 43.0 26.3 30.7 · 41.4 28.7 29.9 · 49.5 25.1 25.4 · 47.4 25.2 27.4 · 37.0 26.9 36.1 · 47.3 25.2 27.5 ·
       47.2 25.9 26.9 · 44.4 25.8 29.8 · 43.9 27.3 28.8 · 44.5 27.2 28.3 · 41.9 26.1 32.0 · 36.3 27.1 36.6 · 35.5 27.3 37.2 ·
       46.6 26.2 27.2 · 35.7 29.2 35.1 · 39.5 25.5 35.0 · 35.0 30.3 34.7 · 45.0 25.2 29.8 · 41.0 27.5 31.5`,
      20,
    ],
    [
      'stock of 5600',
      5600,
      '1380×22 1520×25 1560×12 1710×14 1820×18 1880×18 1930×20 2000×10 2050×12 2100×14 2140×16 2150×18 2200×20',
      73,
    ],
  ] as const)('%s', (_, length, text, boards) => {
    const job = plain(length, text)
    const cutting = cutBoards(job)
    assertSawn(job, cutting)
    expect(cutting.patterns.length).toBe(boards)
    expect(cutting.bound).toBe(boards)
  })
})

/** Least cost by trying every set of pieces as the next board: no bound, no pattern, no order. */
const slowly = ({ wanted, boards, kerf, ends }: SawJob): number => {
  const cuts = wanted.flatMap(({ length, count }) => Array<number>(count).fill(length))
  const all = (1 << cuts.length) - 1
  const oneBoard = Array.from({ length: all + 1 }, (_, set) => {
    const own = cuts.filter((_, i) => set & (1 << i))
    const sum = own.reduce((total, cut) => total + cut, 0)
    const fits = boards.filter(
      ({ length }) =>
        sum + (own.length - 1) * kerf + 2 * ends <= length + 1e-6 || (own.length === 1 && sum <= length),
    )
    return set === 0 ? Number.POSITIVE_INFINITY : Math.min(...fits.map(({ cost }) => cost))
  })
  const least = new Float64Array(all + 1).fill(Number.POSITIVE_INFINITY)
  least[0] = 0
  for (let set = 1; set <= all; set++)
    for (let part = set; part > 0; part = (part - 1) & set)
      least[set] = Math.min(least[set]!, oneBoard[part]! + least[set ^ part]!)
  return least[all]!
}

test('costs what the slow way costs, with kerf, ends and boards of several lengths, by length and by price', () => {
  const length = fc.oneof(
    { weight: 5, arbitrary: fc.integer({ min: 150, max: 2950 }) },
    fc.integer({ min: 2360, max: 2400 }),
  )
  let proven = 0
  let priced = 0
  let alone = 0
  const runs = 300
  fc.assert(
    fc.property(
      fc.uniqueArray(length, { minLength: 1, maxLength: 4 }),
      fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 4, maxLength: 4 }),
      fc.constantFrom([3000], [2400, 3000], [1800, 2400, 3000], [2950, 3000]),
      fc.array(fc.integer({ min: 100, max: 900 }), { minLength: 3, maxLength: 3 }),
      fc.boolean(),
      fc.constantFrom(0, 3, 4.5),
      fc.constantFrom(0, 5, 25),
      (lengths, counts, boards, prices, byPrice, kerf, ends) => {
        const wanted = lengths.map((own, i) => ({ length: own, count: Math.min(counts[i]!, 2 + (i % 2)) }))
        const job = {
          wanted,
          boards: boards.map((own, i) => ({ length: own, cost: byPrice ? prices[i]! : own })),
          kerf,
          ends,
        }
        const cutting = cutBoards(job)
        assertSawn(job, cutting)
        const slow = slowly(job)
        assertNear(cutting.cost, slow, 1e-6, JSON.stringify(job))
        atMost(cutting.bound, slow + 1e-6)
        if (cutting.bound >= slow - 1e-6) proven++
        if (byPrice) priced++
        if (lengths.some((own) => boards.some((b) => own <= b && own > b - 2 * ends))) alone++
      },
    ),
    { numRuns: runs },
  )
  expect(proven).toBe(runs)
  expect(Math.min(priced, alone)).toBeGreaterThan(10)
})

test('a piece as long as a board takes it as it comes, and one that is longer is refused', () => {
  const job = { wanted: [{ length: 2400, count: 2 }], boards: [{ length: 2400, cost: 1 }], kerf: 3, ends: 5 }
  expect(cutBoards(job).patterns.length).toBe(2)
  expect(() => cutBoards({ ...job, wanted: [{ length: 2401, count: 1 }] })).toThrow(RangeError)
})

test('what no plan can reach is proven: two of 51 never share a board of 100', () => {
  const job = { wanted: [{ length: 51, count: 7 }], boards: [{ length: 100, cost: 1 }], kerf: 0, ends: 0 }
  const { cost, bound } = cutBoards(job)
  expect([cost, bound]).toEqual([7, 7])
})
