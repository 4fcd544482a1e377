import { describe, expect, test } from 'vitest'
import { visualLetters } from '../../../src/write/type/visual-order.ts'

const shown = (text: string): string => visualLetters(text).join('')

describe('letters as they stand from left to right', () => {
  test.each(['Ramp (1)', 'Ράμπα', 'a 12'])('as typed where all go to the right: %s', (text) => {
    expect(shown(text)).toBe(text)
  })

  // Unicode 15, chapter 9.2 and the charts of Arabic presentation forms; UAX 9, examples of rule L2
  test.each([
    ['Hebrew', 'שלום', 'םולש'],
    ['Hebrew with a number and brackets', 'רמפה 12 (א)', '(א) 12 הפמר'],
    ['a line of both', 'ramp שלום 2', 'ramp 2 םולש'],
    ['seen, lam and alef as one, meem', 'سلام', '\uFEE1\uFEFC\uFEB3'],
    ['a letter that does not go on', 'دار', '\uFEAD\uFE8D\uFEA9'],
    ['beh at the start, between and at the end', 'ببب', '\uFE90\uFE92\uFE91'],
    ['beh alone', 'ب', '\uFE8F'],
    ['Persian', 'پل', '\uFEDE\uFB58'],
  ])('%s', (_, typed, seen) => {
    expect(shown(typed)).toBe(seen)
  })

  test('an accent follows its letter', () => {
    expect(shown('בָא')).toBe('אבָ')
  })
})
