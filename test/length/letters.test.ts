import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { textValue } from '../../src/design/check/value.ts'
import { letterPattern } from '../../src/length/letter-pattern.ts'
import { harmless } from '../../src/length/quote.ts'
import { lineWords } from '../../src/length/words.ts'

// Unicode's own classes, by the engine's tables, say what a pattern without them must find
const everyLetter = Array.from({ length: 0x110000 }, (_, code) => String.fromCodePoint(code))

describe('what is found without the tables of all letters', () => {
  it('is harmful, or not, as its class says', () => {
    const harmful = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u
    expect(
      everyLetter.filter(
        (letter) => letter !== '\t' && (harmless(letter) !== letter) !== harmful.test(letter),
      ),
    ).toEqual([])
  })

  it('is refused in a title as its class says', () => {
    const refused = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u
    const found = everyLetter.filter(
      (letter) => 'fault' in textValue(`a${letter}a`, 3) !== refused.test(letter),
    )
    expect(found).toEqual([])
  })

  it('is what the pattern with the tables finds', () => {
    const patternOf = letterPattern(String.raw`^(.*\S)\s+(\p{L}+)$`, 'u')
    const letters = fc.constantFrom(...'aZ9/łЖ滑🛹\u0301 \t\u00a0\n', '')
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 12 }), (list) => {
        const text = list.join('')
        expect(patternOf(text).exec(text)).toEqual(/^(.*\S)\s+(\p{L}+)$/u.exec(text))
      }),
      { numRuns: 2000 },
    )
  })
})

it('a line may be broken at each blank but within a figure and before its unit', () => {
  const pieces = fc.constantFrom(...'71 3/4 in mm mmm in, + 9– 18 a1 stud 1/ in-'.split(' '), ' ', '')
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 8 }), (list) => {
      const line = list.join(' ')
      expect(lineWords(line)).toEqual(line.split(/(?<![\d+–]) | (?!\d+\/\d|(?:mm|in)\b)/))
    }),
    { numRuns: 5000 },
  )
})
