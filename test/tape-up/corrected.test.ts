import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Correction } from '../../src/printer/correction.ts'
import { type Plotted, plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

const template = (name: string): string =>
  readFileSync(new URL(`../../templates/${name}.yaml`, import.meta.url), 'utf8')

// stretch and lean as bad printers have them; the last leans to the other side
const corrections: readonly Correction[] = [
  [1.01, 0.002, -0.003, 0.99],
  [0.985, 0, 0, 1.02],
  [1, 0.005, 0.005, 1],
  [0.9975, -0.004, -0.006, 1.0012],
]

const plotted = async (...of: Parameters<typeof plotJob>): Promise<Plotted> => {
  const found = await plotJob(...of)
  if ('stops' in found) throw new Error(JSON.stringify(found.stops))
  return found
}

describe.each(corrections)('a correction of %f %f %f %f', (...correction) => {
  it.each([
    { name: 'quarter-mm', paper: 'a4', cover: 'whole' },
    { name: 'quarter-mm-round', paper: 'letter', cover: 'line' },
    { name: 'quarter-in', paper: 'a3', cover: 'whole' },
    { name: 'quarter-mm', paper: 'letter', cover: 'ribbon' },
  ] as const)('$name on $paper, $cover: true prints join to the line', async ({ name, paper, cover }) => {
    const found = tapeUp(await plotted({ text: template(name), paper, cover, correction }))
    expect(found.faults).toEqual([])
    expect(found.sought).toBeGreaterThan(700)
    expect(found.crosses).toBeGreaterThan(8)
  })
})

it('a correction moves what is written, by its own figures, and the third part of the set code alone', async () => {
  const job = { text: template('quarter-mm'), paper: 'a0', cover: 'line' } as const
  const [a, b, c, d] = corrections[0]!
  const [plain, turned] = [await plotted(job), await plotted({ ...job, correction: [a, b, c, d] })]
  expect(plain.plan.correction).toEqual([1, 0, 0, 1])
  expect(turned.plan.correction).toEqual([a, b, c, d])
  const parts = [plain, turned].map(({ plan }) => plan.set.split('-'))
  expect(parts[0]!.slice(0, 2)).toEqual(parts[1]!.slice(0, 2))
  expect(parts[0]![2]).not.toBe(parts[1]![2])
  // the test square's sides, 150 mm in points: a times as wide and leaning by b, d times as high and leaning by c
  const side = (150 * 72) / 25.4
  const square = ({ plan }: Plotted): readonly number[] => {
    const [m, n, o, p] = plan.pages.find((page: { kind: string }) => page.kind === 'square').toPattern
    const det = m * p - n * o
    return [p, -n, -o, m].map((v) => (v / det) * 150)
  }
  const [before, after] = [square(plain), square(turned)]
  const near = (actual: number, expected: number): void =>
    // a plan's numbers end at ten decimals
    expect(Math.abs(actual - expected)).toBeLessThan(1e-6)
  before.forEach((v, i) => {
    near(v, [side, 0, 0, side][i]!)
  })
  after.forEach((v, i) => {
    near(v, [a * side, b * side, c * side, d * side][i]!)
  })
})
