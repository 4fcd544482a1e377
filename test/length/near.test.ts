import { expect, it } from 'vitest'
import { nearWord, wordDistance } from '../../src/length/near.ts'

it.each([
  ['', '', 0],
  ['deck', '', 4],
  ['hieght', 'height', 1],
  ['kitten', 'sitting', 3],
  ['skin', 'sikn', 1],
  // optimal string alignment, not the full metric: the swapped pair may not be touched again
  ['ca', 'abc', 3],
])('from `%s` to `%s` it takes %d steps', (a, b, steps) => {
  expect(wordDistance(a, b)).toBe(steps)
  expect(wordDistance(b, a)).toBe(steps)
})

it('the nearest word is offered, a far one is not', () => {
  expect(nearWord('widht', ['height', 'width'])).toBe('width')
  expect(nearWord('Deck', ['desk', 'deck'])).toBe('deck')
  expect(nearWord('colour', ['toe', 'deck'])).toBeUndefined()
  expect(nearWord('x', ['m'])).toBeUndefined()
  expect(nearWord('m'.repeat(100_000), ['m'])).toBeUndefined()
})
