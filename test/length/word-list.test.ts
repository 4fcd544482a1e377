import { expect, test } from 'vitest'
import { numberList, wordList } from '../../src/length/word-list.ts'

test('words are listed as one says them', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(wordList)).toEqual(['', 'a', 'a and b', 'a, b and c'])
})

test.each([
  [[1], 'stud 1'],
  [[1, 2], 'studs 1 and 2'],
  [[1, 2, 3], 'studs 1 to 3'],
  [[1, 3, 4, 5, 6, 7, 9], 'studs 1, 3 to 7 and 9'],
  [[2, 3, 7, 8, 12], 'studs 2, 3, 7, 8 and 12'],
])('numbers %j are listed with their runs, two in a row as two', (numbers, words) => {
  expect(numberList('stud', numbers)).toBe(words)
})
