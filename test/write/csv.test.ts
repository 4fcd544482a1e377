import { expect, it } from 'vitest'
import { writeCsv } from '../../src/write/csv.ts'

it('rows end and fields are quoted as RFC 4180 says', () => {
  // RFC 4180 section 2, rules 1, 5, 6 and 7
  expect(
    writeCsv([
      ['aaa', 'b,bb', null],
      ['line\nbreak', 'b"bb', 1.5],
    ]),
  ).toBe('aaa,"b,bb",\r\n"line\nbreak","b""bb",1.5\r\n')
})

it('no cell is a formula to a spreadsheet', () => {
  for (const text of ['=1+1', '+1', '-1', '@x', '\tx'])
    expect(writeCsv([[text]]).replaceAll('"', '')).toBe(`'${text}\r\n`)
  // a number that is one stays one
  expect(writeCsv([[-1.25]])).toBe('-1.25\r\n')
})

it('what is no number is refused', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => writeCsv([[value]])).toThrow(RangeError)
})
