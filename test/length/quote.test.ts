import { expect, it } from 'vitest'
import { harmless, quote } from '../../src/length/quote.ts'

it('what a terminal would obey is taken out, columns kept', () => {
  const text = 'a\tb\u001b[2Jc\u202ed\u{e0001}e\n'
  expect(harmless(text)).toBe('a b?[2Jc?d??e?')
  expect(harmless(text)).toHaveLength(text.length)
  expect(harmless('Łódź 滑板 🛹')).toBe('Łódź 滑板 🛹')
})

it('a long value is cut to forty letters, whole letters only', () => {
  expect(quote('toe')).toBe('`toe`')
  expect(quote('x'.repeat(41))).toBe(`\`${'x'.repeat(39)}…\``)
  expect(quote('🛹'.repeat(1000), 3)).toBe('`🛹🛹…`')
})
