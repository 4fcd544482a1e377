import { describe, expect, it } from 'vitest'
import { editDesign, readDesign, readSettled } from '../../src/index.ts'
import { nextView } from '../../src/web/state/model.ts'
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
    // its ramp can be added to and taken away before it is found
    const view = nextView(open, null, null)
    expect(view.good).toBeNull()
    expect(view.read?.ramps.map(({ name }) => name)).toEqual(['ramp'])
    const filled = filledOf(open)
    const reading = readDesign(filled)
    expect('problems' in reading ? reading.problems : []).toEqual([])
    expect(filled).not.toMatch(/solve|^ *(lip|limits):/m)
  })
})

it.each([
  ['ramp', 'ramp'],
  // 40 letters at most, the number among them
  ['a ramp whose name has 38 letters: abcdef', 'a ramp whose name has 38 letters: abcd'],
  ['é'.repeat(40), 'é'.repeat(38)],
])('a ramp like another one gets a name of its own, however many there are: %s', (own, short) => {
  let text = editDesign(starter, 'ramps.0.name', own)
  const names = [own]
  for (let n = 2; n <= 12; n++) {
    text = withTwin(text, names, 0)
    names.push(`${[...short].slice(0, n < 10 ? 38 : 37).join('')} ${n}`)
  }
  const reading = readDesign(text)
  expect('design' in reading && reading.design.ramps.map(({ name }) => name)).toEqual(names)
})
