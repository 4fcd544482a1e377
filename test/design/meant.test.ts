import { expect, it } from 'vitest'
import { change, problemsOf, single } from './sample.ts'

it.each([
  ['a key with a slip', 'height:', 'hieght:', 'height'],
  ['a height in another unit', 'deck: 640', 'deck: 25.2', '25.2 cm'],
  ['a unit with a slip', 'toe: 40', 'toe: 40 mn', '40 mm'],
  ['a comma', 'toe: 40', 'toe: 40,5', '40.5'],
  ['a pair without its x', 'toe: 40', 'toe: 40\n    studs: { section: 38 by 89 }', '38 x 89'],
  ['a half of a pair in another unit', 'toe: 40', 'toe: 40\n    studs: { section: 1.5 x 89 }', '1.5 cm x 89'],
  ['timber by its name', 'toe: 40', 'toe: 40\n    studs: { section: 2x6 }', '38 x 140'],
  [
    'lengths of timber as a shop with feet has them',
    'units: mm',
    'units: mm\nstock: { timber: [2400, 96] }',
    '96 in',
  ],
  [
    'both sides of a panel in inches',
    'units: mm',
    'units: mm\nstock: { panels: [{ sheet: 18 plywood, size: 48 x 96 }] }',
    '48 x 96 in',
  ],
  ['timber by its name, turned round', 'toe: 40', 'toe: 40\n    studs: { section: 4x2 }', '38 x 89'],
  ['a word with a slip', 'units: mm', 'units: millimetres', 'mm'],
])('what a message asks about %s can be put in its place', (_, from, to, meant) => {
  const text = change(single, from, to)
  const problem = problemsOf(text).find((one) => one.meant !== undefined)
  expect(problem?.meant, JSON.stringify(problemsOf(text))).toBe(meant)
  expect(problem!.message).toContain(meant.replace(/ x .*/, '').split(' ').at(-1))
  const { offset, end } = problem!.place
  const mended = `${text.slice(0, offset)}${meant}${text.slice(end)}`
  expect(problemsOf(mended)).toEqual([])
})

it.each([
  ['timber that may be in cm or named in inches', 'toe: 40\n    studs: { section: 4 x 6 }'],
  ['a comma before three digits', 'toe: 1,200'],
])('where %s may be two things, nothing is put in its place', (_, to) => {
  const problems = problemsOf(change(single, 'toe: 40', to))
  expect(problems).toHaveLength(1)
  expect(problems[0]!.meant).toBeUndefined()
})
