import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type ByteSink, createByteSink } from '../../src/write/byte-sink.ts'
import { shownSlowly } from '../support/shown-number.ts'

const taken = (sink: ByteSink): string => Buffer.from(sink.take()).toString('latin1')

test('every number is written as `toFixed` rounds it, next to halves and beyond 2^31 parts too', () => {
  const sink = createByteSink()
  const wrong: unknown[] = []
  let asked = 0
  fc.assert(
    fc.property(
      fc.double({ min: -3e5, max: 3e5, noNaN: true }),
      fc.integer({ min: 0, max: 9 }),
      fc.integer({ min: -4, max: 4 }),
      (value, decimals, off) => {
        const half = (Math.round(value * 10 ** decimals) + 0.5) / 10 ** decimals
        for (const one of [value, value / 1e6, Math.round(value), -0, half, half * (1 + off * 2 ** -52)]) {
          sink.operand(one, decimals, 'a point', 'x')
          const written = taken(sink)
          asked++
          if (written !== `${shownSlowly(one, decimals)} `) wrong.push([one, decimals, written])
        }
      },
    ),
    { numRuns: 2000 },
  )
  expect(wrong).toEqual([])
  expect(asked).toBe(12_000)
})

test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e21])(
  '%d throws and names the thing',
  (value) => {
    const sink = createByteSink()
    expect(() => sink.operand(value, 4, 'a point', 'page 3')).toThrow(RangeError)
    expect(() => sink.operand(value, 4, 'a point', 'page 3')).toThrow('a point of page 3')
  },
)

test('words and numbers stand in the order in which they came, however many, and are taken once', () => {
  const sink = createByteSink()
  let whole = ''
  for (let i = 0; i < 20_000; i++) {
    sink.operand(i / 8, 4, 'a point', 'x')
    sink.words('m\n')
    whole += `${i / 8} m\n`
  }
  const first = sink.take()
  expect(Buffer.from(first).toString('latin1') === whole).toBe(true)
  sink.words('x'.repeat(100_000))
  expect(taken(sink)).toBe('x'.repeat(100_000))
  // what was taken stays as it was
  expect(Buffer.from(first).toString('latin1') === whole).toBe(true)
  expect(taken(sink)).toBe('')
})
