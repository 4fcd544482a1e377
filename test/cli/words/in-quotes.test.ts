import { expect, it } from 'vitest'
import { inQuotes } from '../../../src/cli/words/in-quotes.ts'

it.each([
  ['--height 2 ft', '--height "2 ft"'],
  ['ramp.yaml --every 4 1/2', '--every "4 1/2"'],
  ['--every 4 1/2 in ramp.yaml', '--every "4 1/2 in"'],
  ['hall --across 149.8mm 149.9mm --down 150mm', '--across "149.8mm 149.9mm"'],
  ['ramp.yaml --only glance, care', '--only "glance, care"'],
  ['--garage 3 m x 4 m', '--garage "3 m x 4 m"'],
  [`--height 2' 6"`, `--height "2' 6in"`],
  ['one.yaml two.yaml', null],
  ['--paper a4 one.yaml two.yaml', null],
  ['--height 600 one.yaml', null],
  ['--height', null],
])('%s has its value in one word as %s', (typed, quoted) => {
  const options = ['--height', '--every', '--across', '--only', '--garage', '--paper']
  expect(inQuotes(typed.split(' '), options)).toBe(
    quoted && `what has a blank in it goes in quotes: ${quoted}`,
  )
})
