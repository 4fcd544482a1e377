import { expect, it } from 'vitest'
import { editDesign, type Problem, readDesign } from '../../src/index.ts'
import { fieldToMend } from '../../src/web/state/go-to-problem.ts'
import { pathOfKey } from '../../src/web/words/labels.ts'
import { templateText } from '../support/templates.ts'

const at = (name: string, type = 'text') => ({ name, type })
const fields = [
  at('ramps.0.toe'),
  at('ramps.0.coping', 'checkbox'),
  at('ramps.0.coping.up'),
  at('ramps.0.coping.notch', 'checkbox'),
  at('ramps.0.coping.notch.along'),
  at('ramps.0.coping.notch.down'),
]

const textOf = (...typed: readonly (readonly [string, string])[]): string =>
  typed.reduce((text, [path, value]) => editDesign(text, path, value), templateText('quarter-mm'))

const problemOf = (text: string): Problem => {
  const reading = readDesign(text)
  if (!('problems' in reading)) throw new Error('nothing is wrong')
  return reading.problems[0]!
}

const mended = (text: string): string | undefined => {
  const { path, place } = problemOf(text)
  return fieldToMend(pathOfKey(path), text.slice(place.offset, place.end), fields)?.name
}

it('a pipe that is told twice is mended in a field of the second, not by the tick that takes the pipe away', () => {
  const text = textOf(['ramps.0.coping', '{ outside: 60.3, up: 8, out: 6, notch: { along: 25, down: 37 } }'])
  expect(problemOf(text).path).toBe('ramps[0].coping')
  expect(mended(text)).toBe('ramps.0.coping.notch.along')
})

it('what has a field is mended there, what has none in the text', () => {
  expect(mended(textOf(['ramps.0.toe', 'abc']))).toBe('ramps.0.toe')
  expect(mended(textOf(['ramps.0.coping', 'abc']))).toBeUndefined()
})
