import { expect, it } from 'vitest'
import { fourLengths, marginsFrom } from '../../src/job/four-lengths.ts'

it.each([
  ['10', ['10']],
  ['1/2 in', ['1/2 in']],
  ['1 1/2', ['1 1/2']],
  [' 4 ft 7 1/4 in ', ['4 ft 7 1/4 in']],
  ['10,20,30,40', ['10', '20', '30', '40']],
  ['1/2 in, 15 mm, 1 cm , 0.5 in', ['1/2 in', '15 mm', '1 cm', '0.5 in']],
  ['10 20 30 40', ['10', '20', '30', '40']],
  ['1/2 3/4 1/2 3/4', ['1/2', '3/4', '1/2', '3/4']],
  ['10mm 1cm 10mm 5mm', ['10mm', '1cm', '10mm', '5mm']],
  ['10 mm 20 mm 10 mm 5 mm', ['10 mm', '20 mm', '10 mm', '5 mm']],
  ['1 1/2 in 15 mm 1 cm 0.5 in', ['1 1/2 in', '15 mm', '1 cm', '0.5 in']],
  ['1/2" 1/2" 3/4" 1/2"', ['1/2"', '1/2"', '3/4"', '1/2"']],
] as const)('%j is %j', (said, parts) => {
  expect(fourLengths(said, 'mm')).toEqual(parts)
})

it.each(['10 20', '10, 20', '10,20,30', '10,20,30,40,50', '10 20 30 40 50', '10 mm 20 mm', '10 mm 20'])(
  '%j is neither one nor four',
  (said) => {
    expect(fourLengths(said, 'mm')).toBeNull()
  },
)

it('a whole number before a fraction may be one length or two: not guessed', () => {
  expect(fourLengths('1 1/2 1 1/2', 'in')).toBeNull()
  expect(fourLengths('10 1/2 10 10', 'mm')).toBeNull()
})

it('what is no length at all is left for its own message', () => {
  for (const said of ['ten', '', '1 1/0 in', '10 furlongs']) expect(fourLengths(said, 'mm')).toEqual([said])
})

it('four go round clockwise from the top', () => {
  expect(marginsFrom([1, 2, 3, 4])).toEqual({ top: 1, right: 2, bottom: 3, left: 4 })
  expect(marginsFrom([5])).toEqual({ top: 5, right: 5, bottom: 5, left: 5 })
})
