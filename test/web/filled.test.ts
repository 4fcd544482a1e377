import { describe, expect, it } from 'vitest'
import { readDesign, readSettled } from '../../src/index.ts'
import { withTwin } from '../../src/web/state/twin.ts'
import { filledText } from '../../src/web/worker/filled.ts'
import { templateText } from '../support/templates.ts'

const starter = templateText('quarter-mm')

const filledOf = (text: string): string => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join())
  return filledText(text, reading)
}

describe('a design with what was left open filled in', () => {
  it.each([
    ['an angle', 'lip: 50°'],
    ['limits', 'limits: { lip: 48 to 52 }'],
    ['limits in lines of their own', 'limits:\n      length: 1400'],
    ['both', 'lip: 50°\n    limits: { length: 1500 }'],
  ])('can be read where %s found it', (_, by) => {
    const open = starter
      .replace(/surface: 1700/, 'surface: solve')
      .replace(/^ {4}toe: 40.*$/m, (line) => `${line}\n    ${by}`)
    const filled = filledOf(open)
    const reading = readDesign(filled)
    expect('problems' in reading ? reading.problems : []).toEqual([])
    expect(filled).not.toMatch(/solve|^ *(lip|limits):/m)
  })
})

it('a ramp like another one gets a name of its own, however many there are', () => {
  let text = starter
  const names = ['ramp']
  for (let n = 2; n <= 12; n++) {
    text = withTwin(text, names, 0)
    names.push(`ramp ${n}`)
  }
  const reading = readDesign(text)
  expect('design' in reading && reading.design.ramps.map(({ name }) => name)).toEqual(names)
})
