import { expect, test } from 'vitest'
import { flatRows } from '../../src/booklet/flat-rows.ts'
import { straightOf } from '../../src/design/kind-traits.ts'
import { rippedTo, rippedWords } from '../../src/ramp/frame/timber.ts'
import { designOf } from '../support/design-of.ts'
import { wholeDesign } from '../support/whole.ts'

const timberOf = (surface: string, skin: string): string => {
  const [flat] = straightOf(
    wholeDesign(
      designOf(`title: A stud as high as the frame
units: in
ramps:
  - kind: flat
    width: 48
    length: 72
    height: { surface: ${surface} }
    skin: ${skin}
`),
    ).ramps,
  )
  return flatRows(flat!, 'in').find(([label]) => label === 'timber')![1]
}

test('a stud as high as the frame is used as bought, whatever the skin leaves of it is reckoned from', () => {
  // 3 1/2 and the skin
  for (const [surface, skin] of [
    ['4 1/8', '[3/8 plywood, 1/4 hardboard]'],
    ['4 1/4', '[1/2 plywood, 1/4 hardboard]'],
    ['4 7/16', '[11/16 plywood, 1/4 hardboard]'],
    ['4 15/32', '[23/32 plywood, 1/4 hardboard]'],
    ['4 5/8', '[3/8 plywood, 3/8 plywood, 3/8 plywood]'],
    ['4 11/32', '[15/32 plywood, 3/8 plywood]'],
  ] as const)
    expect(timberOf(surface, skin), surface).not.toContain('ripped')
  expect(timberOf('4', '[3/8 plywood, 1/4 hardboard]')).toContain('ripped to 3 3/8')
})

test('a timber is ripped where it lacks more than the last bits of a sum, of thickness or depth', () => {
  const timber = { x: 0, y: 0, angle: 0, lies: 'edge', width: 38, depth: 89 } as const
  expect(rippedTo(timber, [38, 89])).toBeNull()
  expect(rippedTo({ ...timber, depth: 89 - 1e-9 }, [89, 38])).toBeNull()
  expect(rippedTo({ ...timber, depth: 80 }, [38, 89])).toEqual([38, 80])
  expect(rippedTo({ ...timber, lies: 'flat', width: 89, depth: 30 }, [38, 89])).toEqual([30, 89])
})

test('a timber is said to be ripped where what is shown of it is less than what is bought', () => {
  const fine = (mm: number): string => mm.toFixed(1)
  for (const lies of ['edge', 'flat'] as const)
    for (const [less, shown] of [
      [0, null],
      [1e-9, null],
      [1e-5, null],
      [0.01, null],
      [0.04, null],
      [0.06, '.9'],
      [9, '.0'],
    ] as const) {
      const [thin, wide] = [38, 89]
      const [width, whole] = lies === 'edge' ? [thin, wide] : [wide, thin]
      const timber = { x: 0, y: 0, angle: 0, lies, width, depth: whole - less }
      const words = shown === null ? '' : `ripped to ${Math.floor(whole - less)}${shown}`
      expect(rippedWords(timber, [wide, thin], fine), `${lies} ${less}`).toBe(words)
      // nothing is said to be ripped that is not sawn so
      expect(words !== '' && rippedTo(timber, [wide, thin]) === null).toBe(false)
    }
})
