import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readLength } from '../../src/length/read.ts'
import { showLength } from '../../src/length/show.ts'

describe('inches', () => {
  // 32nds of an inch on a steel rule, by eye: 17 15/32 lies between 17 7/16 and 17 1/2
  it.each([
    [0, '0'],
    [1, '1/32'],
    [2, '1/16'],
    [3, '1/8–'],
    [5, '1/8+'],
    [8, '1/4'],
    [31, '15/16+'],
    [33, '1+'],
    [44 * 32 - 1, '43 15/16+'],
    [17 * 32 + 14, '17 7/16'],
    [17 * 32 + 15, '17 1/2–'],
    [17 * 32 + 13, '17 3/8+'],
    [-8, '-1/4'],
    [-(17 * 32 + 15), '-17 1/2–'],
  ])('%d thirty-seconds', (n, text) => {
    expect(showLength((n / 32) * 25.4, 'in')).toBe(text)
  })

  it('round to the nearest 1/32 and lose no sign on the way', () => {
    expect(showLength(0.3, 'in')).toBe('0')
    expect(showLength(-0.3, 'in')).toBe('0')
    expect(showLength(-0.5, 'in')).toBe('-1/32')
  })

  it('put no dash behind a whole number, where it would be read as one', () => {
    for (let n = 0; n <= 60 * 32; n++)
      expect(showLength((n / 32) * 25.4, 'in')).not.toMatch(/^(\d+|.* \d+)–$/)
  })

  it('shown and read again lie within 1/64 in, strong and shy counted', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (mm) => {
        const shown = showLength(mm, 'in')
        const [, minus, number, side] = /^(-?)(.*?)([+–]?)$/.exec(shown)!
        const reading = readLength(number!, 'in')
        const nudge = side === '+' ? 25.4 / 32 : side === '–' ? -25.4 / 32 : 0
        const back = 'mm' in reading ? (reading.mm + nudge) * (minus === '-' ? -1 : 1) : Number.NaN
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(25.4 / 64 + 1e-9)
      }),
    )
  })
})

describe('millimetres', () => {
  it.each([
    [640.4, 0, '640'],
    [640.46, 1, '640.5'],
    [640.04, 1, '640'],
    [1000, 1, '1000'],
    [0.04, 1, '0'],
    [-0.04, 1, '0'],
    [-12.25, 2, '-12.25'],
    [100, 0, '100'],
  ])('%d with at most %d decimals', (mm, decimals, text) => {
    expect(showLength(mm, 'mm', { decimals })).toBe(text)
  })

  it('carry their unit when asked', () => {
    expect(showLength(18, 'mm', { unit: true })).toBe('18 mm')
    expect(showLength(19.05, 'in', { unit: true })).toBe('3/4 in')
  })

  it('are refused when they are no number', () => {
    expect(() => showLength(Number.NaN, 'mm')).toThrow('NaN is not a length to show')
    expect(() => showLength(Number.POSITIVE_INFINITY, 'in')).toThrow(RangeError)
  })
})
