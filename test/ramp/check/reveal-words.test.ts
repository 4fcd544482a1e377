import { expect, test } from 'vitest'
import { revealWords } from '../../../src/ramp/check/reveal-words.ts'
import { plain } from '../ramps.ts'

const show = (mm: number): string => `${mm}`

test.each([
  [{ up: 8, out: 6 }, '8 above the deck board, 6 out of the ridden face'],
  [{ up: 0, out: 0 }, 'flush with the deck board, flush with the ridden face'],
  [{ up: -2, out: -3 }, '2 below the deck board, 3 behind the ridden face'],
])('%j: signs become words', (reveals, words) => {
  expect(revealWords(reveals, plain, show)).toBe(words)
})

test("without a deck board it is the side's top", () => {
  expect(revealWords({ up: 8, out: 6 }, { deckBoard: null }, show, ' and ')).toBe(
    "8 above the side's top and 6 out of the ridden face",
  )
})
