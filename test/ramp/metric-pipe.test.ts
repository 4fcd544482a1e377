import { expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starterFor } from '../../src/design/starters.ts'
import { solveDesign } from '../../src/ramp/solve.ts'

const told = (outside: string): readonly string[] => {
  const reading = readDesign(
    writeStarter(starterFor('quarter', 'mm')).replace('outside: 60.3', `outside: ${outside}`),
  )
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return solveDesign(reading.design)
    .checks.filter(({ id }) => id === 'pipe-nominal')
    .map(({ message }) => message)
}

// EN 10255, from memory: DN 50 is 60.3 mm outside, DN 40 48.3 mm
test('steel pipe typed by its nominal diameter in mm is told, and what it measures is not', () => {
  expect(told('50')).toEqual([expect.stringContaining('(outside: 60.3)')])
  expect(told('40')).toEqual([expect.stringContaining('(outside: 48.3)')])
  expect(told('60.3')).toEqual([])
  expect(told('50\n      material: plastic')).toEqual([])
})
