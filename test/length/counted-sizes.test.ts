import { expect, test } from 'vitest'
import { countedSizes } from '../../src/length/counted-sizes.ts'

test('sizes of pieces are told once each, with how many look alike in the units shown', () => {
  expect(countedSizes([], 'mm')).toEqual([])
  expect(
    countedSizes(
      [
        [604, 1800],
        [590, 1216],
        [604, 1800],
        [1216, 590],
      ],
      'mm',
    ),
  ).toEqual(['2 of 604 × 1800', '590 × 1216', '1216 × 590'])
  // 25.4 and 25.5 are 1 inch to a thirty-second
  expect(
    countedSizes(
      [
        [25.4, 508],
        [25.5, 508],
      ],
      'in',
    ),
  ).toEqual([expect.stringMatching(/^2 of 1 × 20$/)])
})
