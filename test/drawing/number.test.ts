import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatNumber } from '../../src/drawing/number.ts'
import { shownSlowly } from '../support/shown-number.ts'

test.each([
  [1.5, 4, '1.5'],
  [100, 4, '100'],
  [100, 0, '100'],
  [1200.1, 0, '1200'],
  [0.1 + 0.2, 4, '0.3'],
  [-0, 4, '0'],
  [-0.4, 0, '0'],
  [-0.00004, 4, '0'],
  [1e-7, 4, '0'],
  [-1e-4, 4, '-0.0001'],
  [123456789012, 2, '123456789012'],
  [595.27559055, 4, '595.2756'],
] as const)('%d with %d decimals is written %s', (value, decimals, written) => {
  expect(formatNumber(value, decimals, 'x')).toBe(written)
})

test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e21])(
  '%d throws and names the thing',
  (value) => {
    expect(() => formatNumber(value, 4, 'width of page 3')).toThrow(RangeError)
    expect(() => formatNumber(value, 4, 'width of page 3')).toThrow('width of page 3')
  },
)

test('what is written reads back within half of the last decimal, short and without exponent', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
      (value, decimals) => {
        const written = formatNumber(value, decimals, 'x')
        expect(written).toMatch(/^-?(0|[1-9]\d*)(\.\d*[1-9])?$/)
        expect(written).not.toBe('-0')
        expect(Math.abs(Number(written) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-7)
      },
    ),
  )
})

test('every number is written as `toFixed` rounds it, next to halves too', () => {
  const wrong: unknown[] = []
  let halves = 0
  fc.assert(
    fc.property(
      fc.double({ min: -3e5, max: 3e5, noNaN: true }),
      fc.integer({ min: 0, max: 9 }),
      fc.integer({ min: -4, max: 4 }),
      (value, decimals, off) => {
        // the double nearest to a half of the last decimal, and those beside it
        const half = (Math.round(value * 10 ** decimals) + 0.5) / 10 ** decimals
        halves++
        for (const one of [value, value / 1000, half, half * (1 + off * 2 ** -52)])
          if (formatNumber(one, decimals, 'x') !== shownSlowly(one, decimals)) wrong.push([one, decimals])
      },
    ),
    { numRuns: 2000 },
  )
  expect(wrong).toEqual([])
  expect(halves).toBe(2000)
})
