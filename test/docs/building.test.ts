import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { sectionNames } from '../../src/booklet/book/booklet.ts'

const building = readFileSync('docs/building.md', 'utf8')
const order = building.slice(building.indexOf('## Order of work'), building.indexOf('## Panels'))

test('what is laid on what follows in the order of the booklet', () => {
  const places = [
    ['framing', '[the frame]'],
    ['skin', '[the skin]'],
    ['coping', '[the pipe]'],
    ['deck', 'the deck board'],
  ].map(([part, words]) => ({ part: sectionNames.indexOf(part!), words: order.lastIndexOf(words!) }))
  for (const { part, words } of places) expect(Math.min(part, words)).toBeGreaterThan(0)
  places.slice(1).forEach(({ part, words }, i) => {
    expect(part).toBeGreaterThan(places[i]!.part)
    expect(words).toBeGreaterThan(places[i]!.words)
  })
})

test('people who lift are counted by weight, as in the booklet', () => {
  expect(building).not.toMatch(/two people lift|lift with two/i)
  expect(building.match(/never fewer\s+than\s+two/g)).toHaveLength(2)
})
