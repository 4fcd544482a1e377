import { expect, test } from 'vitest'
import { readLength } from '../../src/length/read.ts'
import { showThickness } from '../../src/length/thickness.ts'

test('a thickness is shown as it is sold, to an odd 32nd, and reads back as the same', () => {
  // PS 1, from memory: panels of 15/32, 19/32 and 23/32 are sold
  for (const typed of ['1/4', '3/8', '15/32', '19/32', '23/32', '3/4', '1 1/8']) {
    const reading = readLength(`${typed} in`, 'in')
    if (!('mm' in reading)) throw new Error(typed)
    expect(showThickness(reading.mm, 'in')).toBe(typed)
    expect(showThickness(reading.mm, 'in', { unit: true })).toBe(`${typed} in`)
  }
  expect(showThickness(6.5, 'mm', { unit: true })).toBe('6.5 mm')
})
