import { expect, it } from 'vitest'
import { layOut } from '../../support/lay-out.ts'
import { pageFaults } from '../../support/page-faults.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

const designs = [
  ...templates.map((name) => ({ text: templateText(name), papers: ['a4', 'letter'] as const })),
  ...[801, 803, 805, 806, 808].map((number) => ({ text: jobOf(number).text, papers: ['letter'] as const })),
]

const found = designs.flatMap(({ text, papers }) =>
  papers.flatMap((paper) =>
    (['whole', 'line', 'ribbon'] as const).flatMap((cover) => {
      const set = layOut(text, paper, cover)
      return set ? [pageFaults(set)] : []
    }),
  ),
)

const sum = (of: (one: (typeof found)[number]) => number): number =>
  found.reduce((all, one) => all + of(one), 0)

const edges = sum(({ seen }) => seen.edges)
const ticks = sum(({ seen }) => seen.ticks)

it('what a page keeps of the outline of a timber it draws, up to the scales of its joints', () => {
  expect(edges).toBeGreaterThan(2000)
  // those that run along a scale or through words
  expect(sum(({ lost }) => lost.length)).toBeLessThan(edges / 34)
})

it('no tick of a ruler stands in the edge of a timber, in its X or in its screw', () => {
  expect(ticks).toBeGreaterThan(10_000)
  // where an edge begins within a square of what is looked at
  expect(sum(({ ruled }) => ruled)).toBeLessThan(ticks / 300)
})

it('the line to saw, a snap line and a joint never meet within 3 mm', () => {
  expect(sum(({ seen }) => seen.joints)).toBeGreaterThan(700)
  expect(sum(({ meets }) => meets)).toBe(0)
})

it('few screws lie within 6 mm of the line that their page is trimmed on: no place of as many pages has fewer', () => {
  const screws = sum(({ seen }) => seen.screws)
  expect(screws).toBeGreaterThan(1000)
  // a whole outline that just fits its pages cannot be moved
  expect(sum((one) => one.screws)).toBeLessThan(screws / 25)
})
